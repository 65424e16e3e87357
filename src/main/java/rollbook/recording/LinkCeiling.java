package rollbook.recording;

import java.util.List;
import java.util.Optional;
import rollbook.quantity.DataRate;
import rollbook.quantity.Fraction;

/**
 * The most that a kind of connection can carry: its line rate less the line code and the frame headers. A reader, adapter
 * or network never passes it and usually stays well below.
 *
 * @param key stable name, such as {@code usb-3.2-gen-2}
 */
public record LinkCeiling(String key, DataRate payload) {

    private static final long BITS_PER_GIGABIT = 1_000_000_000L;

    /** Preamble 8, header 14, check sequence 4 and the gap of 12 octets around each Ethernet frame. */
    private static final int ETHERNET_FRAMING = 38;

    private static final int IP_AND_TCP_HEADERS = 40;
    private static final int TCP_TIMESTAMPS = 12;

    private static final List<LinkCeiling> ALL = List.of(
            lineCoded("usb-3.2-gen-1", 5, 1, 8, 10),
            lineCoded("usb-3.2-gen-1x2", 5, 2, 8, 10),
            lineCoded("usb-3.2-gen-2", 10, 1, 128, 132),
            lineCoded("usb-3.2-gen-2x2", 10, 2, 128, 132),
            // The line codes of the next two are from memory, unverified; tunnelling takes more off.
            lineCoded("usb4-gen-2x2", 10, 2, 64, 66),
            lineCoded("usb4-gen-3x2", 20, 2, 128, 132),
            lineCoded("pcie-3-x1", 8, 1, 128, 130),
            lineCoded("pcie-3-x2", 8, 2, 128, 130),
            lineCoded("pcie-3-x4", 8, 4, 128, 130),
            lineCoded("pcie-4-x1", 16, 1, 128, 130),
            lineCoded("pcie-4-x2", 16, 2, 128, 130),
            lineCoded("pcie-4-x4", 16, 4, 128, 130),
            lineCoded("sata-6", 6, 1, 8, 10),
            lineCoded("sas-3-x4", 12, 4, 8, 10),
            ethernet("ethernet-1-mtu-1500", 1, 1500, false),
            ethernet("ethernet-10-mtu-1500", 10, 1500, true),
            ethernet("ethernet-10-mtu-9000", 10, 9000, false),
            ethernet("ethernet-25-mtu-9000", 25, 9000, false));

    public static List<LinkCeiling> all() {
        return ALL;
    }

    public static Optional<LinkCeiling> find(String key) {
        return ALL.stream().filter(ceiling -> ceiling.key().equals(key)).findFirst();
    }

    /** So many data bits in so many line bits: 8 in 10, or 128 in 132. */
    private static LinkCeiling lineCoded(String key, int gigabitsPerLane, int lanes, int dataBits, int lineBits) {
        Fraction bits = Fraction.of(gigabitsPerLane * BITS_PER_GIGABIT * lanes).times(Fraction.of(dataBits, lineBits));
        return new LinkCeiling(key, DataRate.ofBitsPerSecond(bits));
    }

    /** TCP over IPv4 in frames of the given payload size, the maximum transmission unit. */
    private static LinkCeiling ethernet(String key, int gigabits, int mtu, boolean timestamps) {
        int payload = mtu - IP_AND_TCP_HEADERS - (timestamps ? TCP_TIMESTAMPS : 0);
        Fraction share = Fraction.of(payload, mtu + ETHERNET_FRAMING);
        return new LinkCeiling(key, DataRate.ofBitsPerSecond(share.times(gigabits * BITS_PER_GIGABIT)));
    }
}
