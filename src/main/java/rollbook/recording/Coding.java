package rollbook.recording;

import java.math.BigInteger;
import rollbook.quantity.ByteCount;
import rollbook.quantity.Fraction;

/** What happens to a picture on its way to the card, as far as it decides how many bytes a frame takes. */
public sealed interface Coding {

    /** Exact bytes of one frame of that size, on average; overheads and sound are not in it. */
    Fraction frameBytes(PictureSize size);

    /** Codings whose frame size follows from the picture alone, so that a compression ratio can refer to them. */
    sealed interface Uncompressed extends Coding {}

    /**
     * One sample for each photosite of a colour mosaic. Each row starts on a byte, as in TIFF and DNG.
     *
     * @param bitsPerPhotosite 1 to 32
     */
    record Bayer(int bitsPerPhotosite, Packing packing) implements Uncompressed {
        public Bayer {
            InvalidFormat.requireWithin("bitsPerPhotosite", bitsPerPhotosite, 1, 32);
        }

        @Override
        public Fraction frameBytes(PictureSize size) {
            long rowBytes = wholeBytes((long) size.width() * paddedBits());
            return Fraction.of(rowBytes * size.height());
        }

        /** A padded mosaic is never stored in less than two bytes a photosite. */
        private int paddedBits() {
            return packing == Packing.PADDED ? Math.max(16, packing.bitsFor(bitsPerPhotosite)) : bitsPerPhotosite;
        }
    }

    /**
     * Colour components for each pixel: RGB or luma and chroma. Each row of blocks starts on a byte.
     *
     * @param bitsPerComponent 1 to 32
     */
    record Components(Sampling sampling, int bitsPerComponent, Packing packing) implements Uncompressed {
        private static final int TEN_BIT = 10;

        public Components {
            InvalidFormat.requireWithin("bitsPerComponent", bitsPerComponent, 1, 32);
        }

        @Override
        public Fraction frameBytes(PictureSize size) {
            return Fraction.of(bandBytes(sampling.componentsPerBand(size)) * sampling.bands(size));
        }

        private long bandBytes(long components) {
            if (packing == Packing.PADDED && bitsPerComponent == TEN_BIT) {
                long words = (components + 2) / 3;
                return words * Integer.BYTES;
            }
            return wholeBytes(components * packing.bitsFor(bitsPerComponent));
        }
    }

    /** Every frame takes the same bytes whatever it shows. */
    record FixedFrameBytes(long bytes) implements Coding {
        public FixedFrameBytes {
            InvalidFormat.requireWithin("frameBytes", bytes, 1, 1_000_000_000_000L);
        }

        @Override
        public Fraction frameBytes(PictureSize size) {
            return Fraction.of(bytes);
        }
    }

    /**
     * A bit rate that is meant for one frame rate and grows in step with the frame rate in use: 200 Mb/s at 25 becomes
     * 400 Mb/s at 50.
     */
    record TargetBitRate(long bitsPerSecond, FrameRate reference) implements Coding {
        private static final int BITS_PER_BYTE = 8;

        public TargetBitRate {
            InvalidFormat.requireWithin("bitRate", bitsPerSecond, 1, 1_000_000_000_000_000L);
        }

        @Override
        public Fraction frameBytes(PictureSize size) {
            return Fraction.of(bitsPerSecond, BITS_PER_BYTE).dividedBy(reference.framesPerSecond());
        }

        /** The whole bytes of a frame in a stream that never passes its bit rate; the rest of a byte is cut. */
        public ByteCount wholeFrameBytes() {
            return ByteCount.roundedDown(frameBytes(PictureSize.NONE));
        }
    }

    /**
     * So many times smaller than an uncompressed frame, on average.
     *
     * @param ratio 1 or more; 3 means a third of the bytes
     */
    record CompressionRatio(Uncompressed uncompressed, Fraction ratio) implements Coding {
        private static final BigInteger LARGEST = BigInteger.valueOf(10_000);

        public CompressionRatio {
            if (ratio.compareTo(Fraction.ONE) < 0 || ratio.compareTo(Fraction.of(LARGEST)) > 0) {
                throw new InvalidFormat("compressionRatio", "recording.invalid.range", 1, LARGEST);
            }
        }

        @Override
        public Fraction frameBytes(PictureSize size) {
            return uncompressed.frameBytes(size).dividedBy(ratio);
        }
    }

    /** No picture at all: a sound roll. */
    record SoundOnly() implements Coding {
        @Override
        public Fraction frameBytes(PictureSize size) {
            return Fraction.ZERO;
        }
    }

    private static long wholeBytes(long bits) {
        return (bits + 7) / 8;
    }
}
