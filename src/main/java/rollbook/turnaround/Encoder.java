package rollbook.turnaround;

import rollbook.quantity.DataRate;

/** Makes fewer bytes of recorded ones while they are copied; all offloads of its station share it. */
public sealed interface Encoder {
    /**
     * Recorded bytes that it takes in a millisecond.
     *
     * @param bytesPerFrame of the recording
     */
    double recordedBytesPerMilli(double bytesPerFrame);

    /** As fast as it gets bytes in. */
    record ByBytes(DataRate rate) implements Encoder {
        public ByBytes {
            Invalid.unless(!rate.isZero(), "rate", "must be above zero");
        }

        @Override
        public double recordedBytesPerMilli(double bytesPerFrame) {
            return BytesPerMilli.of(rate);
        }
    }

    /** As fast as it gets frames done, however large they are. */
    record ByFrames(double framesPerSecond) implements Encoder {
        private static final double MILLIS_PER_SECOND = 1000;

        public ByFrames {
            Invalid.unless(framesPerSecond > 0, "framesPerSecond", "must be above zero");
        }

        @Override
        public double recordedBytesPerMilli(double bytesPerFrame) {
            return framesPerSecond / MILLIS_PER_SECOND * bytesPerFrame;
        }
    }
}
