package rollbook.turnaround;

import rollbook.quantity.DataRate;

/** Rates as the simulation counts them. To a part in 10<sup>15</sup>, far below the millisecond of a day. */
final class BytesPerMilli {
    private static final double MILLIS_PER_SECOND = 1000;

    private BytesPerMilli() {}

    static double of(DataRate rate) {
        double bytesPerSecond = rate.bytesPerSecond().numerator().doubleValue()
                / rate.bytesPerSecond().denominator().doubleValue();
        return bytesPerSecond / MILLIS_PER_SECOND;
    }
}
