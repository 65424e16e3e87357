package rollbook.offload;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.production.CopyPlan;
import rollbook.production.Leg;
import rollbook.production.Membership;
import rollbook.recording.OffloadRate.Place;
import rollbook.web.Display;

/** Gathers what the page of a session shows, and says it in words. */
@Component
class SessionPages {
    private final Offloads offloads;
    private final Rolls rolls;
    private final SessionParts parts;
    private final Copies copies;
    private final CopyPlan plan;
    private final RollSizes sizes;
    private final ShowRates showRates;
    private final ExpectedRates expectedRates;
    private final Display display;

    SessionPages(
            Offloads offloads,
            Rolls rolls,
            SessionParts parts,
            Copies copies,
            CopyPlan plan,
            RollSizes sizes,
            ShowRates showRates,
            ExpectedRates expectedRates,
            Display display) {
        this.offloads = offloads;
        this.rolls = rolls;
        this.parts = parts;
        this.copies = copies;
        this.plan = plan;
        this.sizes = sizes;
        this.showRates = showRates;
        this.expectedRates = expectedRates;
        this.display = display;
    }

    SessionPage page(Membership by, UUID sessionId) {
        Offload offload = offloads.get(by.productionId(), sessionId);
        Roll roll = rolls.get(by.productionId(), offload.rollId());
        List<SessionPart> passed = parts.of(by.productionId(), sessionId);
        boolean running = offload.outcome() == Offload.Outcome.RUNNING;
        String slowest = SessionPart.slowest(passed);
        ExpectedRate rate = running
                ? expectedRates.of(showRates.of(by.productionId()), offload, slowest)
                : expectedRates.stated(offload, slowest);
        Long bytes = running ? sizes.bytes(by.productionId(), roll) : offload.sizeBytes();
        return new SessionPage(
                offload,
                roll,
                passed,
                rate,
                bytes,
                running ? Estimates.end(offload.startedAt(), bytes, rate.bytesPerSecond()) : null,
                Estimates.difference(offload.measuredBytesPerSecond(), offload.expectedBytesPerSecond()),
                running ? warnings(by, passed, roll, bytes) : List.of());
    }

    /** Destinations that are expected to overflow. A roll of known size is counted among their copies already. */
    private List<String> warnings(Membership by, List<SessionPart> passed, Roll roll, @Nullable Long bytes) {
        if (bytes == null) {
            return List.of();
        }
        Map<UUID, Long> used = copies.usedBytes(by.productionId()).stream()
                .collect(Collectors.toMap(Copies.Used::itemId, Copies.Used::bytes));
        Map<UUID, Integer> keptPercent =
                plan.legs(by.productionId()).stream().collect(Collectors.toMap(Leg::id, Leg::keptPercent));
        return passed.stream()
                .filter(part -> part.kind() == Place.DESTINATION && part.capacityBytes() != null)
                .flatMap(part -> {
                    int kept = part.legId() == null ? 100 : keptPercent.getOrDefault(part.legId(), 100);
                    long needed = Estimates.percentOf(bytes, kept);
                    long others = used.getOrDefault(part.itemId(), 0L) - (roll.sizeBytes() == null ? 0 : needed);
                    long free = Math.max(0, part.capacityBytes() - others);
                    return needed <= free
                            ? Stream.empty()
                            : Stream.of(display.text(
                                    "offload.session.too-little",
                                    part.code(),
                                    display.size(free),
                                    display.size(needed)));
                })
                .toList();
    }

    String sentence(Membership by, SessionPage page) {
        Offload offload = page.offload();
        return switch (offload.outcome()) {
            case RUNNING ->
                page.expectedEnd() == null
                        ? display.text(
                                "offload.session.sentence.running",
                                offload.rollCode(),
                                offload.cardCode(),
                                offload.destinations())
                        : display.text(
                                "offload.session.sentence.until",
                                offload.rollCode(),
                                offload.cardCode(),
                                offload.destinations(),
                                display.when(page.expectedEnd(), by.zone()));
            case FINISHED ->
                display.text(
                        "offload.session.sentence.finished",
                        offload.rollCode(),
                        offload.destinations(),
                        comparison(page.difference()));
            case ABANDONED ->
                display.text("offload.session.sentence.abandoned", offload.rollCode(), offload.cardCode());
        };
    }

    /** 18 % slower than expected. */
    String comparison(@Nullable Double difference) {
        if (difference == null) {
            return display.text("offload.rate.incomparable");
        }
        if (Math.abs(difference) < 0.0005) {
            return display.text("offload.rate.equal");
        }
        String share = display.percent(Math.abs(difference));
        return difference < 0 ? display.text("offload.rate.slower", share) : display.text("offload.rate.faster", share);
    }
}
