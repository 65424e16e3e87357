package rollbook.offload;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.inventory.MediaItem;
import rollbook.production.Leg;
import rollbook.production.Rendition;
import rollbook.quantity.ByteCount;
import rollbook.quantity.DataRate;
import rollbook.turnaround.MeasuredRates.Expected;
import rollbook.turnaround.OffloadPart;
import rollbook.turnaround.OffloadPart.CardWay;
import rollbook.turnaround.PastSession.Written;
import rollbook.web.Display;

/** How long an offload should take as it is proposed. */
@Component
class StartEstimates {
    private final ShowRates showRates;
    private final ExpectedRates expectedRates;
    private final Display display;

    StartEstimates(ShowRates showRates, ExpectedRates expectedRates, Display display) {
        this.showRates = showRates;
        this.expectedRates = expectedRates;
        this.display = display;
    }

    /** In words; empty if the bytes or all speeds are unknown, or nothing can be proposed. */
    String sentence(
            UUID productionId,
            StartForm proposal,
            UUID cardId,
            @Nullable Long bytes,
            List<MediaItem> items,
            List<Leg> legs) {
        Map<UUID, MediaItem> byId = items.stream().collect(Collectors.toMap(MediaItem::id, Function.identity()));
        Map<OffloadPart, DataRate> stated = new HashMap<>();
        List<Written> written = new ArrayList<>();
        for (Offloads.Destination destination : proposal.destinations()) {
            MediaItem medium = byId.get(destination.itemId());
            Written one = new Written(medium.code(), ShowRates.kind(medium, rendition(destination, legs)));
            written.add(one);
            if (medium.writeBytesPerSecond() != null) {
                stated.put(one.kind(), DataRate.ofBytesPerSecond(medium.writeBytesPerSecond()));
            }
        }
        CardWay way = way(proposal, byId.get(cardId), byId, stated);
        LearnedOffloads learned = showRates.of(productionId, stated);
        return way == null || bytes == null
                ? ""
                : learned.rates()
                        .expected(way, written.stream().map(Written::kind).toList())
                        .map(expected -> sentence(expected, written, stated, bytes))
                        .orElse("");
    }

    private static @Nullable CardWay way(
            StartForm proposal,
            @Nullable MediaItem card,
            Map<UUID, MediaItem> byId,
            Map<OffloadPart, DataRate> stated) {
        if (card == null || proposal.reader() == null) {
            return null;
        }
        MediaItem reader = byId.get(proposal.reader());
        MediaItem adapter = proposal.adapter() == null ? null : byId.get(proposal.adapter());
        CardWay way = ShowRates.way(reader, adapter, card);
        ShowRates.stated(reader, adapter, card).ifPresent(rate -> stated.put(way, rate));
        return way;
    }

    private String sentence(Expected expected, List<Written> written, Map<OffloadPart, DataRate> stated, long bytes) {
        Optional<Long> slowest =
                stated.values().stream().min(DataRate::compareTo).map(ExpectedRates::rounded);
        ExpectedRate rate = expectedRates.of(expected, written, slowest.orElse(null));
        return display.text(
                "offload.start.estimate",
                display.duration(expected.rate().rate().timeFor(ByteCount.of(bytes))),
                display.rate(ExpectedRates.rounded(expected.rate().rate())),
                rate.because());
    }

    private static Rendition rendition(Offloads.Destination destination, List<Leg> legs) {
        return legs.stream()
                .filter(leg -> leg.id().equals(destination.legId()))
                .map(Leg::rendition)
                .findFirst()
                .orElse(Rendition.AS_RECORDED);
    }
}
