package rollbook.people;

import java.util.ArrayList;
import java.util.List;
import org.springframework.stereotype.Component;

/** Accounts that the sign-in page may show to anyone. Empty, except where a demonstration fills it. */
@Component
public class SignInHints {
    private final List<Account> accounts = new ArrayList<>();

    public synchronized void add(String signInName, String password, String does) {
        accounts.add(new Account(signInName, password, does));
    }

    synchronized List<Account> accounts() {
        return List.copyOf(accounts);
    }

    public record Account(String signInName, String password, String does) {}
}
