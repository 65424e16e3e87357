package rollbook.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ListingTests {
    private static final List<Choice> KINDS = List.of(new Choice("CARD", "card"), new Choice("DRIVE", "drive"));

    private enum Column {
        CODE,
        HIRED_UNTIL
    }

    private Listing.Order<Column> order;
    private LocalDate since;

    private Listing read(Map<String, String> asked) {
        Listing listing = Listing.of("/p/X/media", asked);
        listing.choose("kind", "Kind", "every kind", KINDS);
        listing.text("q", "Words");
        since = listing.date("since", "Since");
        order = listing.order(Column.values(), new Listing.Order<>(Column.CODE, false), Enum::name);
        listing.page();
        return listing;
    }

    @Test
    void whatTheAddressAsksForStaysInItsAddressesAndThePageDoesnt() {
        Listing listing = read(Map.of("kind", "card", "q", " a&b=c ", "sort", "-hired-until", "page", "3"));
        assertThat(listing.href()).isEqualTo("/p/X/media?kind=CARD&q=a%26b%3Dc&sort=-hired-until");
        assertThat(listing.at("/p/X/media.csv")).isEqualTo("/p/X/media.csv?kind=CARD&q=a%26b%3Dc&sort=-hired-until");
        assertThat(listing.page()).isEqualTo(3);
        assertThat(listing.unknown()).isEmpty();
        assertThat(order).isEqualTo(new Listing.Order<>(Column.HIRED_UNTIL, true));
    }

    @Test
    void aHeadingSortsByItsColumnAndTheOtherWayRoundIfItIsSortedByIt() {
        Listing listing = read(Map.of("kind", "CARD", "page", "2"));
        assertThat(listing.column("CODE").sorted()).isEqualTo("ascending");
        assertThat(listing.column("CODE").href()).isEqualTo("/p/X/media?kind=CARD&sort=-code");
        assertThat(listing.column("HIRED_UNTIL").sorted()).isNull();
        assertThat(listing.column("HIRED_UNTIL").href()).isEqualTo("/p/X/media?kind=CARD&sort=hired-until");
        Listing back = read(Map.of("sort", "-code"));
        assertThat(back.column("CODE").sorted()).isEqualTo("descending");
        assertThat(back.column("CODE").href())
                .as("the usual order needs no word")
                .isEqualTo("/p/X/media");
    }

    @Test
    void whatIsNotUnderstoodIsPassedOverAndTold() {
        Listing listing = read(Map.of(
                "kind", "SPOON", "since", "2026-02-31", "sort", "code; drop table x", "page", "0", "colour", "red"));
        assertThat(listing.unknown())
                .containsExactlyInAnyOrder("SPOON", "2026-02-31", "code; drop table x", "0", "colour");
        assertThat(listing.narrows()).isFalse();
        assertThat(listing.href()).isEqualTo("/p/X/media");
        assertThat(order).isEqualTo(new Listing.Order<>(Column.CODE, false));
        assertThat(since).isNull();
        assertThat(listing.page()).isEqualTo(1);
    }

    @Test
    void eachFilterThatNarrowsCanBeDroppedByItself() {
        Listing listing = read(Map.of("kind", "DRIVE", "q", "vault", "since", "2026-11-01"));
        assertThat(listing.narrowing())
                .extracting(ListFilter::label, ListFilter::shown, ListFilter::without)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("Kind", "drive", "/p/X/media?q=vault&since=2026-11-01"),
                        org.assertj.core.groups.Tuple.tuple("Words", "vault", "/p/X/media?kind=DRIVE&since=2026-11-01"),
                        org.assertj.core.groups.Tuple.tuple("Since", "2026-11-01", "/p/X/media?kind=DRIVE&q=vault"));
    }

    @ParameterizedTest
    @CsvSource({"1, 1", "007, 7", "-1, 1", "x, 1", "99999999999999, 1", "'', 1", "1.5, 1", "999999999, 999999999"})
    void aPageThatIsNoneIsTheFirst(String typed, int page) {
        assertThat(read(Map.of("page", typed)).page()).isEqualTo(page);
    }

    @Test
    void controlCharactersAreTakenOut() {
        assertThat(read(Map.of("q", "a\u0000b\n")).narrowing().get(0).value()).isEqualTo("ab");
    }
}
