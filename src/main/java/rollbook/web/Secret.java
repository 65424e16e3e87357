package rollbook.web;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;

/**
 * What stands in an address that opens something to whoever has it: 256 bits of chance in base64url. Only its SHA-256 is
 * kept. It is never written out by itself.
 */
public final class Secret {
    private static final SecureRandom CHANCE = new SecureRandom();
    private static final int BYTES = 32;

    private final String text;

    private Secret(String text) {
        this.text = text;
    }

    public static Secret fresh() {
        byte[] bytes = new byte[BYTES];
        CHANCE.nextBytes(bytes);
        return new Secret(Base64.getUrlEncoder().withoutPadding().encodeToString(bytes));
    }

    /** As somebody wrote it, whatever it is. */
    public static Secret of(String text) {
        return new Secret(text);
    }

    /** What is kept of it. Neither salted nor made slow: nobody guesses 256 bits. */
    public byte[] sha256() {
        try {
            return MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException everyJavaHasIt) {
            throw new IllegalStateException(everyJavaHasIt);
        }
    }

    /** For the address that it stands in. */
    public String text() {
        return text;
    }
}
