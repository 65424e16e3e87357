package rollbook.demo;

import java.util.Locale;
import rollbook.production.Role;

/** The demo's accounts, one for each role; people are known by what they do only. */
enum Account {
    WRANGLER(Role.WRANGLER, "Data wrangler"),
    OFFICE(Role.OFFICE, "Production office"),
    POST(Role.POST, "Post supervisor"),
    READER(Role.READER, "Insurer’s reader"),
    ADMINISTRATOR(Role.ADMINISTRATOR, "Administrator");

    /** No secret: the sign-in page shows it. */
    static final String PASSWORD = "rollbook-demo";

    final Role role;
    final String displayName;

    Account(Role role, String displayName) {
        this.role = role;
        this.displayName = displayName;
    }

    String signInName() {
        return role.name().toLowerCase(Locale.ROOT);
    }

    /** Key of the message that says what the account may do. */
    String messageKey() {
        return "demo.account." + role.name();
    }
}
