package rollbook.production;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Who may call a handler method that changes something. A handler under a production's path that answers anything but
 * GET must carry it: without it, nobody may.
 */
@Target(ElementType.METHOD)
@Retention(RetentionPolicy.RUNTIME)
public @interface AllowedFor {
    Role[] value();
}
