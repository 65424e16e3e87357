package rollbook.format;

import rollbook.recording.Coding;

/** The kinds of coding, by the names under which they are stored and chosen. */
enum CodingKind {
    BAYER,
    COMPONENTS,
    FIXED_FRAME,
    TARGET_BIT_RATE,
    COMPRESSION_RATIO,
    SOUND_ONLY;

    static CodingKind of(Coding coding) {
        if (coding instanceof Coding.Bayer) {
            return BAYER;
        }
        if (coding instanceof Coding.Components) {
            return COMPONENTS;
        }
        if (coding instanceof Coding.FixedFrameBytes) {
            return FIXED_FRAME;
        }
        if (coding instanceof Coding.TargetBitRate) {
            return TARGET_BIT_RATE;
        }
        if (coding instanceof Coding.CompressionRatio) {
            return COMPRESSION_RATIO;
        }
        return SOUND_ONLY;
    }
}
