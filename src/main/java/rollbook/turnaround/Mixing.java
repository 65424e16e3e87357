package rollbook.turnaround;

/** Makes the first number of a stream from its name, so that streams of near names have nothing in common. */
final class Mixing {
    private static final long OFFSET = 0xcbf29ce484222325L;
    private static final long PRIME = 0x100000001b3L;

    private Mixing() {}

    static long of(long seed, int replicate, String purpose, String entity) {
        return mixed(mixed(mixed(seed) + replicate) + hash(purpose) * PRIME + hash(entity));
    }

    /** FNV-1a over the characters’ two bytes each, as its authors publish it; a {@code String}’s own has 32 bits only. */
    private static long hash(String text) {
        long hash = OFFSET;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            hash = (hash ^ (c & 0xff)) * PRIME;
            hash = (hash ^ (c >>> 8)) * PRIME;
        }
        return hash;
    }

    /** The finalizer of SplitMix64 (Steele, Lea, Flood 2014). */
    private static long mixed(long number) {
        long z = number + 0x9e3779b97f4a7c15L;
        z = (z ^ (z >>> 30)) * 0xbf58476d1ce4e5b9L;
        z = (z ^ (z >>> 27)) * 0x94d049bb133111ebL;
        return z ^ (z >>> 31);
    }
}
