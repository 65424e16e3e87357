package rollbook.format;

import rollbook.recording.Coding;

/** The kinds of coding, by the names under which they are stored and chosen. */
enum CodingKind {
    BAYER,
    COMPONENTS,
    FIXED_FRAME,
    TARGET_BIT_RATE,
    COMPRESSED_BAYER,
    COMPRESSED_COMPONENTS,
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
        if (coding instanceof Coding.CompressionRatio compressed) {
            return compressed.uncompressed() instanceof Coding.Bayer ? COMPRESSED_BAYER : COMPRESSED_COMPONENTS;
        }
        return SOUND_ONLY;
    }

    /** Whether a mosaic of photosites is what is stored, compressed or not. */
    public boolean mosaic() {
        return this == BAYER || this == COMPRESSED_BAYER;
    }

    /** Whether colour components are what is stored, compressed or not. */
    public boolean components() {
        return this == COMPONENTS || this == COMPRESSED_COMPONENTS;
    }

    public boolean compressed() {
        return this == COMPRESSED_BAYER || this == COMPRESSED_COMPONENTS;
    }

    public boolean picture() {
        return this != SOUND_ONLY;
    }
}
