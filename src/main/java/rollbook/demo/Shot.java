package rollbook.demo;

import rollbook.quantity.Fraction;
import rollbook.recording.Audio;
import rollbook.recording.Coding;
import rollbook.recording.FrameRate;
import rollbook.recording.Overheads;
import rollbook.recording.Packing;
import rollbook.recording.PictureSize;
import rollbook.recording.RecordingFormat;
import rollbook.recording.Vc3;

/** The ways in which the demo's cameras record, made from plain figures, and the card that each needs. */
enum Shot {
    /** The main unit's usual one: 12 bits a photosite, squeezed to half. */
    USUAL(6, sixK("6K 12-bit 2:1", new Coding.CompressionRatio(mosaic(), Fraction.of(2)))),
    /** For shots that will be worked on: every bit as it came. */
    EFFECTS(6, sixK("6K 12-bit uncompressed", mosaic())),
    SECOND_UNIT(
            4,
            new RecordingFormat(
                    "UHD VC-3 4:2:2 10-bit",
                    new PictureSize(3840, 2160),
                    FrameRate.of(24),
                    new Coding.FixedFrameBytes(
                            Vc3.frame(1271, new PictureSize(3840, 2160)).bytes()),
                    Overheads.ofFrame(4_096),
                    new Audio(4, 48_000, 24)));

    /** Seconds between two clips' starts are counted from this many minutes a clip, as a rule. */
    final int clipsPerTenMinutes;

    final RecordingFormat format;

    Shot(int clipsPerTenMinutes, RecordingFormat format) {
        this.clipsPerTenMinutes = clipsPerTenMinutes;
        this.format = format;
    }

    private static Coding.Bayer mosaic() {
        return new Coding.Bayer(12, Packing.PACKED);
    }

    private static RecordingFormat sixK(String name, Coding coding) {
        return new RecordingFormat(
                name,
                new PictureSize(6144, 3456),
                FrameRate.of(24),
                coding,
                Overheads.ofFrame(8_192),
                new Audio(2, 48_000, 24));
    }
}
