package rollbook.mail;

import java.io.Serial;

/** A message that the mail server didn't take over, as far as one can tell. */
final class Undelivered extends Exception {
    @Serial
    private static final long serialVersionUID = 1;

    enum How {
        /** There was no talk about the message: the server doesn't answer, or doesn't let us in. */
        NOT_REACHED,
        /** The server says not now (4yz). */
        NOT_NOW,
        /** The server says no (5yz). */
        REFUSED,
        /** The talk broke off without an answer. */
        UNCERTAIN
    }

    private static final int LONGEST = 500;

    private final How how;

    /** @param says what the server said, or what broke */
    Undelivered(How how, String says, Throwable cause) {
        super(says.length() > LONGEST ? says.substring(0, LONGEST) : says, cause);
        this.how = how;
    }

    How how() {
        return how;
    }

    String says() {
        return String.valueOf(getMessage());
    }
}
