package rollbook.turnaround;

import java.util.List;

/** Takes one card at a time. */
public record Reader(String name, List<Way> ways) {
    public Reader {
        Invalid.ifBlank(name, "name");
        ways = List.copyOf(ways);
    }

    boolean takes(String cardType) {
        return ways.stream().anyMatch(way -> way.cardType().equals(cardType));
    }
}
