package rollbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rollbook.inventory.CardState;
import rollbook.inventory.Condition;
import rollbook.inventory.MediaItem;
import rollbook.inventory.Ownership;
import rollbook.offload.ShowRates;
import rollbook.production.Leg;
import rollbook.production.MediaKind;
import rollbook.production.Rendition;
import rollbook.quantity.DataRate;
import rollbook.turnaround.MeasuredRates;
import rollbook.turnaround.OffloadPart;
import rollbook.turnaround.PastSession;

/** Worked by hand: sessions of 400 GB in 1,000 s run at 400 MB/s, though the drive is stated with 450. */
class MediaFactsTests {
    private static final long MB = 1_000_000;
    private static final Leg LEG = new Leg(
            new UUID(0, 7),
            "Shuttle",
            MediaKind.DRIVE,
            new UUID(0, 9),
            "Set",
            Rendition.AS_RECORDED,
            100,
            null,
            true,
            0);

    private final MediaItem card = item("CARD-1", MediaKind.CARD, 900, CardState.BLANK, null, false);
    private final MediaItem held = item("CARD-2", MediaKind.CARD, 800, CardState.HELD, null, false);
    private final MediaItem away = item("CARD-3", MediaKind.CARD, 800, CardState.BLANK, null, true);
    private final MediaItem reader = item("READER-1", MediaKind.READER, 500, null, null, false);
    private final MediaItem drive = item("SHUTTLE-1", MediaKind.DRIVE, 450, null, LEG.id(), false);

    private static MediaItem item(
            String code,
            MediaKind kind,
            long megabytes,
            @Nullable CardState state,
            @Nullable UUID legId,
            boolean offSite) {
        return new MediaItem(
                UUID.nameUUIDFromBytes(code.getBytes(StandardCharsets.UTF_8)),
                code,
                "",
                kind,
                kind.name().toLowerCase(Locale.ROOT),
                kind.hasCapacity() ? 1_000_000 * MB : null,
                megabytes * MB,
                megabytes * MB,
                Ownership.HIRED,
                "",
                14_000L,
                null,
                legId,
                new UUID(0, 9),
                "Set",
                offSite,
                "",
                Condition.GOOD,
                state,
                0);
    }

    private MediaFacts facts(int sessions, boolean freeOnly) {
        OffloadPart.CardWay way = ShowRates.way(reader, null, card);
        OffloadPart.WrittenKind kind = ShowRates.kind(drive, Rendition.AS_RECORDED);
        List<PastSession> past = IntStream.range(0, sessions)
                .mapToObj(i -> new PastSession(
                        way,
                        List.of(new PastSession.Written(drive.code(), kind)),
                        400_000 * MB,
                        i * 10_000_000L,
                        i * 10_000_000L + 1_000_000))
                .toList();
        Map<OffloadPart, DataRate> stated =
                Map.of(way, DataRate.ofBytesPerSecond(500 * MB), kind, DataRate.ofBytesPerSecond(450 * MB));
        return new MediaFacts(
                List.of(card, held, away, reader, drive), List.of(), MeasuredRates.of(past, stated), freeOnly);
    }

    @Test
    void cardsThatAreAlikeCountTogetherAndThoseAwayDoNot() {
        DayFacts.CardType type = facts(0, false).cardTypes().get(0);
        assertThat(type.count()).isEqualTo(2);
        assertThat(type.readBytesPerSecond()).as("the slower of the two").isEqualTo(800 * MB);
        assertThat(type.hireWeekMinorUnits()).isEqualTo(14_000L);
    }

    @Test
    void onADayInProgressAHeldCardDoesNotCount() {
        MediaFacts facts = facts(0, true);
        assertThat(facts.cardTypes().get(0).count()).isEqualTo(1);
        assertThat(facts.cardsByState())
                .containsExactly(new DayFacts.InState(CardState.BLANK, 1), new DayFacts.InState(CardState.HELD, 1));
    }

    @Test
    void whatTheShowMeasuredReplacesWhatIsStated() {
        DayFacts.Destination measured =
                facts(3, false).destinations(List.of(LEG)).get(0);
        assertThat(measured.itemCode()).isEqualTo("SHUTTLE-1");
        assertThat(measured.writeBytesPerSecond()).isEqualTo(400 * MB);
        assertThat(measured.sessions()).isEqualTo(3);

        DayFacts.Destination stated = facts(2, false).destinations(List.of(LEG)).get(0);
        assertThat(stated.writeBytesPerSecond())
                .as("two sessions teach nothing")
                .isEqualTo(450 * MB);
        assertThat(stated.sessions()).isZero();
        assertThat(facts(3, false).measuredWays())
                .as("the drive held them back")
                .isEmpty();
    }
}
