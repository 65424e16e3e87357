package rollbook.report;

import java.math.BigDecimal;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.offload.Roll;
import rollbook.production.Membership;
import rollbook.report.HandoverView.CopyRow;
import rollbook.report.HandoverView.DayRolls;
import rollbook.report.HandoverView.DayRow;
import rollbook.report.HandoverView.DocumentRow;
import rollbook.report.HandoverView.MediumRow;
import rollbook.report.HandoverView.RollRow;
import rollbook.report.ReportWords.ActRow;
import rollbook.report.ReportWords.Line;
import rollbook.schedule.ShootingDay;
import rollbook.verification.ClearingRecord;
import rollbook.verification.RollProof;
import rollbook.verification.RollProof.CopyProof;
import rollbook.verification.RollProof.ProvingDocument;
import rollbook.web.Display;

/** Says the handover report in words. */
@Component
class HandoverViews {
    private final ReportWords words;
    private final Display display;
    private final Clock clock;

    HandoverViews(ReportWords words, Display display, Clock clock) {
        this.words = words;
        this.display = display;
        this.clock = clock;
    }

    /** On paper, with the rolls of all days. */
    HandoverView onPaper(Handover handover, Membership reader) {
        return new Writing(handover, reader, true)
                .view(handover.days().stream().map(ReportRows.PlannedDay::day).toList());
    }

    /** @param shown the day whose rolls the page lists; null if the show has none */
    HandoverView onScreen(Handover handover, Membership reader, @Nullable ShootingDay shown) {
        return new Writing(handover, reader, false).view(shown == null ? List.of() : List.of(shown));
    }

    private final class Writing {
        private final Handover handover;
        private final Membership reader;
        private final boolean paper;
        private final Map<UUID, List<RollProof>> byDay;
        private final Map<UUID, DocumentRow> documents = new LinkedHashMap<>();

        Writing(Handover handover, Membership reader, boolean paper) {
            this.handover = handover;
            this.reader = reader;
            this.paper = paper;
            this.byDay = handover.rollsByDay();
        }

        HandoverView view(List<ShootingDay> shown) {
            List<DayRolls> rolls = shown.stream()
                    .filter(day -> !paper || byDay.containsKey(day.id()))
                    .map(this::rolls)
                    .toList();
            return new HandoverView(
                    paper,
                    display.text("report.handover.title"),
                    display.text("report.production", reader.productionName(), reader.code()),
                    sentence(),
                    words.printed(clock.instant(), reader.zone()),
                    handover.days().stream().map(this::day).toList(),
                    unproven(),
                    acts(ClearingRecord.Kind.CLEARED_WITHOUT_PROOF),
                    acts(ClearingRecord.Kind.ALARM),
                    media(),
                    rolls,
                    List.copyOf(documents.values()),
                    handover.sheet().sha256());
        }

        private String sentence() {
            List<RollProof> all = handover.proofs().rolls();
            return all.isEmpty()
                    ? display.text("report.handover.no-rolls")
                    : display.text(
                                    "report.handover.rolls",
                                    all.size(),
                                    byDay.size(),
                                    display.size(Handover.recordedBytes(all)))
                            + " " + words.proven(all, handover.proofs().copiesAsked()) + words.bad(all);
        }

        private DayRow day(ReportRows.PlannedDay planned) {
            ShootingDay day = planned.day();
            List<RollProof> rolls = byDay.getOrDefault(day.id(), List.of());
            long proven = rolls.stream()
                    .filter(roll -> roll.provenCopies() >= handover.proofs().copiesAsked())
                    .count();
            return new DayRow(
                    day.id(),
                    display.text("report.day.name", day.number(), day.unitName()),
                    DayViews.href(reader, "days/" + day.id() + "/report", paper),
                    display.shortDate(day.date()),
                    display.text("schedule.state." + day.state()),
                    display.count(rolls.size()),
                    display.size(Handover.recordedBytes(rolls)),
                    plain(planned.minutes()),
                    plain(rolls.stream()
                            .map(roll -> roll.roll().minutes())
                            .filter(Objects::nonNull)
                            .reduce(BigDecimal.ZERO, BigDecimal::add)),
                    rolls.isEmpty()
                            ? display.text("web.none")
                            : display.text("report.handover.of", proven, rolls.size()),
                    signed(day));
        }

        private String plain(@Nullable BigDecimal number) {
            String text = Numbers.plain(number);
            return text == null ? display.text("web.none") : text;
        }

        private String signed(ShootingDay day) {
            String names = handover.signOffs().stream()
                    .filter(signOff -> signOff.stands() && signOff.dayId().equals(day.id()))
                    .map(SignOff::signedByName)
                    .distinct()
                    .collect(Collectors.joining(", "));
            return names.isEmpty() ? display.text("web.none") : names;
        }

        private List<Line> unproven() {
            return handover.proofs().rolls().stream()
                    .filter(roll -> roll.provenCopies() < handover.proofs().copiesAsked())
                    .sorted(Comparator.comparing(RollProof::standing))
                    .map(roll -> new Line(
                            roll.roll().code(),
                            DayViews.href(reader, "rolls/" + roll.roll().id(), paper),
                            roll.holds().isEmpty() ? roll.says() : String.join(" ", roll.holds())))
                    .toList();
        }

        private List<ActRow> acts(ClearingRecord.Kind kind) {
            return handover.acts().stream()
                    .filter(act -> act.kind() == kind)
                    .map(act -> words.act(act, reader.zone()))
                    .toList();
        }

        private List<MediumRow> media() {
            return handover.media().stream()
                    .filter(ReportRows.Medium::holdsFiles)
                    .sorted(Comparator.comparing(ReportRows.Medium::placeName))
                    .map(medium -> new MediumRow(
                            medium.placeName(),
                            medium.code(),
                            DayViews.href(reader, "media/" + medium.id(), paper),
                            display.text("inventory.kind." + medium.kind()),
                            medium.holder(),
                            state(medium),
                            medium.cardState() == null ? display.count(medium.rolls()) : display.text("web.none"),
                            medium.cardState() == null ? display.size(medium.usedBytes()) : display.text("web.none")))
                    .toList();
        }

        private String state(ReportRows.Medium medium) {
            String name = medium.state().name();
            boolean portal = medium.state() instanceof rollbook.inventory.CardState || name.equals("QUARANTINED");
            return display.text((portal ? "web.card-state." : "inventory.state.") + name);
        }

        private DayRolls rolls(ShootingDay day) {
            return new DayRolls(
                    display.text("report.handover.day", day.number(), day.unitName(), display.date(day.date())),
                    byDay.getOrDefault(day.id(), List.of()).stream()
                            .sorted(Comparator.comparing(proof -> proof.roll().code()))
                            .map(this::roll)
                            .toList());
        }

        private RollRow roll(RollProof proof) {
            Roll roll = proof.roll();
            Integer clips = handover.clips().get(roll.id());
            List<CopyRow> copies = new ArrayList<>();
            for (CopyProof copy : proof.copies()) {
                copies.add(new CopyRow(words.cell(copy), copy.copy().placeName(), proof(copy)));
            }
            return new RollRow(
                    roll.code(),
                    DayViews.href(reader, "rolls/" + roll.id(), paper),
                    roll.cameraLetter(),
                    roll.cardCode(),
                    plain(roll.minutes()),
                    words.size(roll.sizeBytes()),
                    clips == null ? display.text("web.none") : display.count(clips),
                    copies);
        }

        private String proof(CopyProof copy) {
            ProvingDocument evidence = copy.evidence();
            if (evidence == null) {
                return "";
            }
            int number = number(evidence);
            return copy.reference() == null
                    ? display.text("report.handover.by", number)
                    : display.text("report.handover.by-against", number, number(copy.reference()));
        }

        private int number(ProvingDocument document) {
            return documents
                    .computeIfAbsent(
                            document.id(),
                            id -> new DocumentRow(
                                    documents.size() + 1,
                                    DayViews.href(reader, "documents/" + id, paper),
                                    document.fileName(),
                                    document.sha256()))
                    .number();
        }
    }
}
