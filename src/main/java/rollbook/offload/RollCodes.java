package rollbook.offload;

import java.math.BigInteger;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The code that a camera's next roll gets: its letter and a number that runs through the show, as in A014. */
final class RollCodes {
    private static final Pattern NUMBERED = Pattern.compile("^(.*?)(\\d+)$");
    private static final int USUAL_DIGITS = 3;

    private RollCodes() {}

    /**
     * One more than the highest number that was used with the beginning of the newest numbered code, in at least as many
     * digits: A014 is followed by A015, A999 by A1000. A camera without such a code begins with number 1.
     *
     * @param codes of the camera's rolls, in the order of their loading
     */
    static String next(String letter, List<String> codes) {
        List<MatchResult> numbered = codes.stream().flatMap(RollCodes::numbered).toList();
        if (numbered.isEmpty()) {
            return letter + padded(BigInteger.ONE, USUAL_DIGITS);
        }
        String beginning = numbered.get(numbered.size() - 1).group(1);
        String highest = numbered.stream()
                .filter(code -> code.group(1).equals(beginning))
                .map(code -> code.group(2))
                .max(Comparator.comparing(BigInteger::new))
                .orElseThrow();
        return beginning + padded(new BigInteger(highest).add(BigInteger.ONE), highest.length());
    }

    private static Stream<MatchResult> numbered(String code) {
        return NUMBERED.matcher(code.strip().toUpperCase(Locale.ROOT)).results();
    }

    private static String padded(BigInteger number, int digits) {
        String plain = number.toString();
        return "0".repeat(Math.max(0, digits - plain.length())) + plain;
    }
}
