package rollbook.web;

import java.util.List;

/**
 * A rule refused what was asked. Answered with 409 and a page that shows the message {@code key} (what happened and
 * why, the thing named by its code), the message {@code key.next} if there is one (what to do), and the way back.
 */
public class Refusal extends RuntimeException {
    private final String key;
    private final transient List<Object> args;

    public Refusal(String key, Object... args) {
        super(key + " " + List.of(args));
        this.key = key;
        this.args = List.of(args);
    }

    public String key() {
        return key;
    }

    public List<Object> args() {
        return args;
    }
}
