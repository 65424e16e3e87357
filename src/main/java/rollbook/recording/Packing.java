package rollbook.recording;

/** How samples of a few bits are laid into bytes. */
public enum Packing {
    /** Bit after bit without gaps; only each row starts on a byte. */
    PACKED,
    /**
     * Filled up to whole words. Three 10-bit components share a 32-bit word (DPX, ST 268, packing method A); every other
     * sample, and each 10-bit photosite, gets the next of 8, 16 or 32 bits.
     */
    PADDED;

    /** The bits that a lone sample takes. */
    int bitsFor(int sampleBits) {
        if (this == PACKED) {
            return sampleBits;
        }
        return sampleBits <= 8 ? 8 : sampleBits <= 16 ? 16 : 32;
    }
}
