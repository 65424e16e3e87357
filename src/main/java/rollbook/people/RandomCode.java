package rollbook.people;

import java.security.SecureRandom;

/** Codes that are read aloud or copied by hand once: 80 random bits in four groups of four. */
final class RandomCode {
    /** Without letters and digits that are mistaken for each other. */
    private static final String ALPHABET = "ABCDEFGHJKLMNPQRSTUVWXYZ23456789";

    private static final int GROUPS = 4;
    private static final int GROUP_LENGTH = 4;
    private static final SecureRandom RANDOM = new SecureRandom();

    private RandomCode() {}

    static String next() {
        StringBuilder code = new StringBuilder();
        for (int i = 0; i < GROUPS * GROUP_LENGTH; i++) {
            if (i > 0 && i % GROUP_LENGTH == 0) {
                code.append('-');
            }
            code.append(ALPHABET.charAt(RANDOM.nextInt(ALPHABET.length())));
        }
        return code.toString();
    }
}
