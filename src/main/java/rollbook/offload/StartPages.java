package rollbook.offload;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.offload.SessionParts.ReaderUse;
import rollbook.production.CopyPlan;
import rollbook.production.Leg;
import rollbook.production.MediaKind;
import rollbook.production.Membership;
import rollbook.web.Choice;
import rollbook.web.Display;

/** Gathers what the page that begins an offload offers, and proposes what is most likely meant. */
@Component
class StartPages {
    private final MediaItems items;
    private final CopyPlan plan;
    private final Copies copies;
    private final SessionParts parts;
    private final RollSizes sizes;
    private final StartEstimates estimates;
    private final Display display;

    StartPages(
            MediaItems items,
            CopyPlan plan,
            Copies copies,
            SessionParts parts,
            RollSizes sizes,
            StartEstimates estimates,
            Display display) {
        this.items = items;
        this.plan = plan;
        this.copies = copies;
        this.parts = parts;
        this.sizes = sizes;
        this.estimates = estimates;
        this.display = display;
    }

    StartPage page(Membership by, Roll roll) {
        UUID production = by.productionId();
        List<MediaItem> good =
                items.list(production).stream().filter(MediaItem::usable).toList();
        List<Copy> written = copies.ofRoll(production, roll.id()).stream()
                .filter(copy -> !copy.isErased())
                .toList();
        Map<UUID, Long> used = copies.usedBytes(production).stream()
                .collect(Collectors.toMap(Copies.Used::itemId, Copies.Used::bytes));
        Map<UUID, UUID> lastItems = copies.lastItems(production);
        List<ReaderUse> uses = parts.readerUses(by);
        Long expected = sizes.bytes(production, roll);
        Set<UUID> holding = written.stream().map(Copy::itemId).collect(Collectors.toSet());

        List<StartPage.LegChoices> legChoices = new ArrayList<>();
        List<StartForm.LegForm> proposed = new ArrayList<>();
        List<Leg> legs = plan.legs(production);
        for (Leg leg : legs) {
            List<Candidate> candidates =
                    Candidate.of(leg, good, used, holding, Estimates.percentOf(expected, leg.keptPercent()));
            boolean copied = written.stream().anyMatch(copy -> leg.id().equals(copy.legId()));
            Optional<UUID> likeliest = Candidate.likeliest(candidates, lastItems.get(leg.id()), copied)
                    .map(candidate -> candidate.item().id());
            legChoices.add(legChoices(leg, candidates, written));
            proposed.add(new StartForm.LegForm(leg.id(), likeliest.orElse(null)));
        }
        List<Candidate> anywhere = Candidate.of(null, good, used, holding, expected);
        StartForm proposal = new StartForm(reader(good, uses), adapter(good, uses), proposed, null);
        return new StartPage(
                roll,
                expected,
                estimates.sentence(production, proposal, roll.cardId(), expected, good, legs),
                readers(good, uses),
                choices(ofKind(good, MediaKind.ADAPTER)),
                legChoices,
                anywhere.stream().map(this::choice).toList(),
                written.stream().map(Copy::itemCode).distinct().toList(),
                proposal);
    }

    private StartPage.LegChoices legChoices(Leg leg, List<Candidate> candidates, List<Copy> written) {
        String on = written.stream()
                .filter(copy -> leg.id().equals(copy.legId()))
                .map(Copy::itemCode)
                .collect(Collectors.joining(", "));
        String what = display.text("offload.rendition." + leg.rendition());
        String hint = on.isEmpty()
                ? display.text("offload.start.leg.hint", what, leg.placeName())
                : display.text("offload.start.leg.hint.copied", what, leg.placeName(), on);
        return new StartPage.LegChoices(
                leg.id(),
                leg.name(),
                hint,
                candidates.stream().map(this::choice).toList());
    }

    private Choice choice(Candidate candidate) {
        String text = Stream.of(
                        candidate.item().code(),
                        display.text("offload.start.choice.free", display.size(candidate.freeBytes())),
                        candidate.tooLittle() ? display.text("offload.start.choice.too-little") : "",
                        candidate.holdsCopy() ? display.text("offload.start.choice.written-over") : "",
                        candidate.inPool() ? "" : display.text("offload.start.choice.other-pool"))
                .filter(part -> !part.isEmpty())
                .collect(Collectors.joining(" · "));
        return new Choice(candidate.item().id().toString(), text);
    }

    private List<Choice> readers(List<MediaItem> good, List<ReaderUse> uses) {
        Map<UUID, String> busy = uses.stream()
                .filter(ReaderUse::running)
                .collect(
                        Collectors.toMap(ReaderUse::readerId, ReaderUse::rollCode, (one, other) -> one + ", " + other));
        return ofKind(good, MediaKind.READER).stream()
                .map(reader -> new Choice(
                        reader.id().toString(),
                        busy.containsKey(reader.id())
                                ? display.text("offload.start.reader.busy", reader.code(), busy.get(reader.id()))
                                : reader.code()))
                .toList();
    }

    private static List<Choice> choices(List<MediaItem> list) {
        return list.stream()
                .map(item -> new Choice(item.id().toString(), item.code()))
                .toList();
    }

    private static List<MediaItem> ofKind(List<MediaItem> good, MediaKind kind) {
        return good.stream().filter(item -> item.kind() == kind).toList();
    }

    /** The reader that was used last, unless another card is in it; then the first that is free. */
    private static @Nullable UUID reader(List<MediaItem> good, List<ReaderUse> uses) {
        Set<UUID> busy = uses.stream()
                .filter(ReaderUse::running)
                .map(ReaderUse::readerId)
                .collect(Collectors.toSet());
        List<UUID> free = ofKind(good, MediaKind.READER).stream()
                .map(MediaItem::id)
                .filter(id -> !busy.contains(id))
                .toList();
        return uses.stream()
                .filter(ReaderUse::last)
                .map(ReaderUse::readerId)
                .filter(free::contains)
                .findFirst()
                .or(() -> free.stream().findFirst())
                .orElse(null);
    }

    private static @Nullable UUID adapter(List<MediaItem> good, List<ReaderUse> uses) {
        List<UUID> adapters =
                ofKind(good, MediaKind.ADAPTER).stream().map(MediaItem::id).toList();
        return uses.stream()
                .filter(ReaderUse::last)
                .map(ReaderUse::adapterId)
                .filter(id -> id != null && adapters.contains(id))
                .findFirst()
                .orElse(null);
    }
}
