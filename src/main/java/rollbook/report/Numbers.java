package rollbook.report;

import java.math.BigDecimal;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** How figures and constants stand in files. */
final class Numbers {
    private Numbers() {}

    /** 412 or 12.5, without zeros that say nothing; null stays null. */
    static @Nullable String plain(@Nullable BigDecimal number) {
        return number == null
                ? null
                : number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
    }

    /** A constant's name in small letters, with spaces. */
    static String words(String constant) {
        return constant.toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
