package rollbook.quantity;

/**
 * The names for many bytes: the decimal ones that media are sold in (SI prefixes, powers of 1000) and the binary ones that
 * a computer may show instead (IEC 80000-13, powers of 1024).
 */
public enum ByteUnit {
    B("B", 1, 0),
    KB("kB", 1000, 1),
    MB("MB", 1000, 2),
    GB("GB", 1000, 3),
    TB("TB", 1000, 4),
    PB("PB", 1000, 5),
    EB("EB", 1000, 6),
    KIB("KiB", 1024, 1),
    MIB("MiB", 1024, 2),
    GIB("GiB", 1024, 3),
    TIB("TiB", 1024, 4),
    PIB("PiB", 1024, 5),
    EIB("EiB", 1024, 6);

    private final String symbol;
    private final long bytes;

    ByteUnit(String symbol, long base, int power) {
        this.symbol = symbol;
        long product = 1;
        for (int i = 0; i < power; i++) {
            product = Math.multiplyExact(product, base);
        }
        this.bytes = product;
    }

    /** As it is written after a figure, such as {@code TB} or {@code TiB}. */
    public String symbol() {
        return symbol;
    }

    public long bytes() {
        return bytes;
    }

    /** How many of the other unit make one of this, so {@code TB.in(TIB)} is a little over 0.909. */
    public Fraction in(ByteUnit other) {
        return Fraction.of(bytes, other.bytes);
    }
}
