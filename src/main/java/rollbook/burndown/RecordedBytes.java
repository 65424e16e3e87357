package rollbook.burndown;

import java.util.List;

/** Bytes as recorded that the days to come still bring, on each course of the show. */
final class RecordedBytes {
    /** By day, in the order in which they are counted, and replicate. */
    private final long[][] bytes;

    RecordedBytes(List<DayToCome> days, DayFactors factors, int replicates) {
        bytes = new long[days.size()][];
        for (int i = 0; i < bytes.length; i++) {
            DayToCome day = days.get(i);
            bytes[i] = toCome(day, factors.factors(day.day().unit(), day.day().number()), replicates);
        }
    }

    /** A day that has recorded more than the course gives it has nothing more to come. */
    private static long[] toCome(DayToCome day, double[] factors, int replicates) {
        long[] toCome = new long[replicates];
        for (int r = 0; r < replicates; r++) {
            toCome[r] = Math.max(0, (long) Math.ceil(day.plannedBytes() * factors[r]) - day.recordedBytes());
        }
        return toCome;
    }

    /** One a replicate; not to be changed. */
    long[] of(int day) {
        return bytes[day];
    }
}
