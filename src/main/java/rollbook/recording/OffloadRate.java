package rollbook.recording;

import java.util.Comparator;
import java.util.List;
import rollbook.quantity.ByteCount;
import rollbook.quantity.DataRate;
import rollbook.quantity.Fraction;

/**
 * How fast a card can be copied: as fast as the slowest thing that the bytes pass. Destinations are written together, so
 * the slowest of them holds the others back.
 */
public record OffloadRate(List<Link> links) {

    /** Where on the way a link stands. */
    public enum Place {
        CARD,
        ADAPTER,
        READER,
        HOST,
        ENCODER,
        DESTINATION
    }

    /** One thing on the way: its place, the code or name to show, and the rate it can pass. */
    public record Link(Place place, String code, DataRate rate) {
        public Link {
            if (rate.isZero()) {
                throw new IllegalArgumentException("a link must pass something: " + code);
            }
        }
    }

    public OffloadRate {
        links = List.copyOf(links);
        if (links.isEmpty()) {
            throw new IllegalArgumentException("an offload passes at least one link");
        }
    }

    public static OffloadRate of(Link... links) {
        return new OffloadRate(List.of(links));
    }

    /** The link to make faster; of equals the first on the way. */
    public Link slowest() {
        return links.stream().min(Comparator.comparing(Link::rate)).orElseThrow();
    }

    public DataRate rate() {
        return slowest().rate();
    }

    /** Exact seconds to copy the bytes, without any pause between files. */
    public Fraction secondsFor(ByteCount bytes) {
        return rate().secondsFor(bytes);
    }

    /** Exact seconds to copy the bytes and then read every written byte once more over another way. */
    public Fraction secondsWithReadBack(ByteCount bytes, OffloadRate readBack) {
        return secondsFor(bytes).plus(readBack.secondsFor(bytes));
    }
}
