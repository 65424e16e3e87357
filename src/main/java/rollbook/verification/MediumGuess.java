package rollbook.verification;

import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * What a document probably describes, from the texts that name it: only ever a suggestion that a person confirms.
 *
 * @param subject null if nothing suggests anything
 * @param itemId the medium, if it is a copy
 */
record MediumGuess(@Nullable Subject subject, @Nullable UUID itemId) {
    static final MediumGuess NONE = new MediumGuess(null, null);

    /**
     * The item whose code stands in the first text that holds one; of several codes in it the longest, so that
     * DRIVE-1 isn't found in DRIVE-12.
     *
     * @param byCode what each code would mean
     * @param texts the strongest hint first
     */
    static MediumGuess from(Map<String, MediumGuess> byCode, @Nullable String... texts) {
        for (String text : texts) {
            if (text == null) {
                continue;
            }
            String folded = text.toUpperCase(Locale.ROOT);
            String found = byCode.keySet().stream()
                    .filter(code -> standsIn(folded, code.toUpperCase(Locale.ROOT)))
                    .max((one, other) -> Integer.compare(one.length(), other.length()))
                    .orElse(null);
            if (found != null) {
                return byCode.get(found);
            }
        }
        return NONE;
    }

    /** Hyphens and underscores stand for each other: file names often can't have what labels have. */
    private static boolean standsIn(String text, String code) {
        String pattern = "(?<![A-Z0-9])" + Pattern.quote(code).replaceAll("[-_ ]", "\\\\E[-_ ]?\\\\Q") + "(?![A-Z0-9])";
        return Pattern.compile(pattern).matcher(text).find();
    }
}
