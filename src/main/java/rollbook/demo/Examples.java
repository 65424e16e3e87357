package rollbook.demo;

import java.math.BigInteger;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import rollbook.inventory.CardState;
import rollbook.manifest.Verdict;
import rollbook.production.Membership;
import rollbook.web.Choice;
import rollbook.web.Display;
import rollbook.web.Link;
import rollbook.web.Listing;
import rollbook.web.Notice;
import rollbook.web.Paged;

/**
 * What the living page shows.
 *
 * @param states the names of a card's states, with the two that tell why a card isn't at hand
 * @param lists first, middle and last page of a list
 * @param listing one that is narrowed and sorted
 */
record Examples(
        Notice notice,
        List<Verdict> verdicts,
        List<String> states,
        List<String> legs,
        List<Row> rows,
        BigInteger total,
        Instant before,
        Instant ahead,
        Instant longAgo,
        List<Paged<Integer>> lists,
        Listing listing,
        List<Choice> units,
        List<Link> links,
        String longCode,
        List<Integer> failures) {
    /** A row of the example's table. */
    record Row(String code, String card, long bytes, List<Verdict> verdicts, CardState state) {}

    static Examples at(Instant now, Membership membership, Display display) {
        return new Examples(
                Notice.of("demo.components.checked", "CARD-014"),
                Arrays.asList(Verdict.values()),
                Stream.concat(Arrays.stream(CardState.values()).map(CardState::name), Stream.of("QUARANTINED", "AWAY"))
                        .toList(),
                List.of("ARRAY-1", "SHUTTLE-02", "TAPE-07"),
                List.of(
                        new Row(
                                "A014",
                                "CARD-014",
                                812_000_000_000L,
                                List.of(Verdict.PROVEN, Verdict.FAILED, Verdict.UNKNOWN),
                                CardState.HELD),
                        new Row(
                                "B009",
                                "CARD-022",
                                498_300_000_000L,
                                List.of(Verdict.CONSISTENT, Verdict.SIZE_ONLY, Verdict.INCOMPLETE),
                                CardState.EXPOSED),
                        new Row(
                                "A013",
                                "CARD-009",
                                960_000L,
                                List.of(Verdict.PROVEN, Verdict.PROVEN, Verdict.PROVEN),
                                CardState.CLEAR_TO_ERASE)),
                new BigInteger("1310300960000"),
                now.minus(Duration.ofMinutes(12)),
                now.plus(Duration.ofHours(5)),
                now.minus(Duration.ofDays(3)),
                List.of(page(1), page(2), page(3)),
                listing(membership, display),
                List.of(new Choice("1", "Main unit"), new Choice("2", "Second unit")),
                List.of(new Link(membership.path("documents"), "main-day-11-cards.sums")),
                "SHUTTLE-02-OF-THE-SECOND-UNIT-ABROAD",
                List.of(403, 404, 409, 413, 500));
    }

    private enum SortedBy {
        CODE,
        SIZE
    }

    /** Narrowed, sorted, and asked for something that it doesn't know. */
    private static Listing listing(Membership membership, Display display) {
        Listing listing = Listing.of(
                membership.path("components"), Map.of("state", "HELD", "q", "014", "sort", "-size", "colour", "red"));
        listing.choose(
                "state",
                display.text("demo.components.table.state"),
                display.text("demo.components.list.any"),
                List.of(new Choice("HELD", display.text("web.card-state.HELD"))));
        listing.text("q", display.text("demo.components.list.text"));
        listing.date("after", display.text("demo.components.list.after"));
        listing.order(
                SortedBy.values(),
                new Listing.Order<>(SortedBy.CODE, false),
                column -> display.text("demo.components.list." + column.name()));
        return listing;
    }

    private static Paged<Integer> page(int number) {
        return new Paged<>(List.of(1, 2, 3), number, 3, 9);
    }
}
