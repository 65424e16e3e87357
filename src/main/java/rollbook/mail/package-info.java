/** Mail: what people are told, whom and when; kept before it is sent, and sent once. Nothing but the demo depends on it. */
@NullMarked
@ApplicationModule(
        allowedDependencies = {
            "production",
            "inventory",
            "schedule",
            "verification",
            "post",
            "purchase",
            "forecast",
            "cost",
            "people",
            "audit",
            "web"
        })
package rollbook.mail;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
