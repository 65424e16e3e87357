package rollbook.turnaround;

import rollbook.quantity.DataRate;

/** Makes fewer bytes of recorded ones while they are copied; all offloads of its station share it. */
public sealed interface Encoder {
    /** Recorded bytes of this camera that it takes in a millisecond. */
    double recordedBytesPerMilli(CameraShift camera);

    /** As fast as it gets bytes in. */
    record ByBytes(DataRate rate) implements Encoder {
        public ByBytes {
            Invalid.unless(!rate.isZero(), "rate", "must be above zero");
        }

        @Override
        public double recordedBytesPerMilli(CameraShift camera) {
            return BytesPerMilli.of(rate);
        }
    }

    /** As fast as it gets frames done, however large they are. */
    record ByFrames(double framesPerSecond) implements Encoder {
        public ByFrames {
            Invalid.unless(framesPerSecond > 0, "framesPerSecond", "must be above zero");
        }

        @Override
        public double recordedBytesPerMilli(CameraShift camera) {
            return framesPerSecond / camera.framesPerSecond() * BytesPerMilli.of(camera.recordedRate());
        }
    }
}
