package rollbook.schedule;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import rollbook.format.NamedFormat;
import rollbook.quantity.Fraction;

/**
 * What is planned of one or more days. Bytes are minutes × bytes a minute of the format, added up exactly.
 *
 * <pre>
 *   90 min at 1.44 GB a minute + 12.5 min at 0.36 GB a minute = 129.6 + 4.5 = 134.1 GB
 * </pre>
 */
record DayTotals(BigDecimal minutes, Fraction exactBytes) {
    static final DayTotals NONE = new DayTotals(BigDecimal.ZERO, Fraction.ZERO);

    static DayTotals of(BigDecimal minutes, NamedFormat format) {
        return new DayTotals(minutes, format.format().bytesPerMinute().times(Fraction.of(minutes)));
    }

    /** The totals of each day that has a plan. */
    static Map<UUID, DayTotals> byDay(List<PlannedMinutes> plans, Map<UUID, NamedFormat> formats) {
        Map<UUID, DayTotals> totals = new HashMap<>();
        for (PlannedMinutes plan : plans) {
            totals.merge(plan.dayId(), of(plan.minutes(), formats.get(plan.formatId())), DayTotals::plus);
        }
        return totals;
    }

    DayTotals plus(DayTotals other) {
        return new DayTotals(minutes.add(other.minutes), exactBytes.plus(other.exactBytes));
    }

    /** A part of a byte counts as a whole one. */
    public BigInteger bytes() {
        return exactBytes.ceiling();
    }

    public String minutesText() {
        return text(minutes);
    }

    /** 412 or 12.5, without zeros that say nothing. */
    static String text(BigDecimal minutes) {
        return minutes.signum() == 0 ? "0" : minutes.stripTrailingZeros().toPlainString();
    }
}
