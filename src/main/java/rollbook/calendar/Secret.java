package rollbook.calendar;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;

/** What stands in the address of a calendar: 256 bits of chance in base64url. It is never written out by itself. */
final class Secret {
    private static final SecureRandom CHANCE = new SecureRandom();
    private static final int BYTES = 32;

    private final String text;

    private Secret(String text) {
        this.text = text;
    }

    static Secret fresh() {
        byte[] bytes = new byte[BYTES];
        CHANCE.nextBytes(bytes);
        return new Secret(Base64.getUrlEncoder().withoutPadding().encodeToString(bytes));
    }

    /** As somebody wrote it, whatever it is. */
    static Secret of(String text) {
        return new Secret(text);
    }

    /** What is kept of it. Neither salted nor made slow: nobody guesses 256 bits. */
    byte[] sha256() {
        try {
            return MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException everyJavaHasIt) {
            throw new IllegalStateException(everyJavaHasIt);
        }
    }

    String path() {
        return "/calendar/" + text + ".ics";
    }
}
