package rollbook.report;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.time.Clock;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.offload.Roll;
import rollbook.production.Leg;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.report.DayView.MediumRow;
import rollbook.report.DayView.PlanRow;
import rollbook.report.DayView.RollRow;
import rollbook.report.DayView.SignatureRow;
import rollbook.report.ReportWords.Cell;
import rollbook.report.ReportWords.Line;
import rollbook.schedule.DayState;
import rollbook.verification.CardStanding;
import rollbook.verification.RollProof;
import rollbook.verification.RollProof.CopyProof;
import rollbook.verification.RollRemarks.Remarks;
import rollbook.web.Display;

/** Says a day's report in words. */
@Component
class DayViews {
    private static final double WHOLE = 1;

    private final ReportWords words;
    private final DayProblems problems;
    private final FactChangeWords changes;
    private final Display display;
    private final Clock clock;

    DayViews(ReportWords words, DayProblems problems, FactChangeWords changes, Display display, Clock clock) {
        this.words = words;
        this.problems = problems;
        this.changes = changes;
        this.display = display;
        this.clock = clock;
    }

    DayView of(DayReport report, List<SignOff> signOffs, Membership reader, boolean paper) {
        FactSheet sheet = report.sheet();
        ZoneId zone = reader.zone();
        List<RollProof> rolls = report.proofs().rolls();
        boolean hasOthers =
                rolls.stream().flatMap(roll -> roll.copies().stream()).anyMatch(copy -> !servesLeg(copy, report));
        List<PlanRow> plan = plan(report);
        return new DayView(
                paper,
                report.day().id(),
                display.text(
                        "report.day.title", report.day().number(), report.day().unitName()),
                display.text("report.production", reader.productionName(), reader.code()),
                sentence(report),
                words.printed(clock.instant(), zone),
                report.day().state() == DayState.WRAPPED,
                reader.may(Role.WRANGLER, Role.OFFICE, Role.POST),
                problems.of(report, reader, paper),
                report.proofs().legs().stream().map(Leg::name).toList(),
                hasOthers,
                rolls.stream()
                        .map(roll -> row(roll, report, hasOthers, reader, paper))
                        .toList(),
                planSays(report, plan),
                plan,
                report.acts().stream().map(act -> words.act(act, zone)).toList(),
                held(rolls, reader, paper),
                media(report),
                signOffs.stream()
                        .map(signOff -> signature(signOff, sheet, reader))
                        .toList(),
                sheet.sha256());
    }

    private String sentence(DayReport report) {
        List<RollProof> rolls = report.proofs().rolls();
        String date = display.date(report.day().date());
        if (rolls.isEmpty()) {
            return display.text("report.day.no-rolls", report.day().number(), date);
        }
        BigInteger bytes = bytes(rolls.stream().map(RollProof::roll).toList());
        return display.text("report.day.rolls", report.day().number(), date, rolls.size(), display.size(bytes)) + " "
                + words.proven(rolls, report.proofs().copiesAsked()) + words.bad(rolls);
    }

    private static boolean servesLeg(CopyProof copy, DayReport report) {
        return report.proofs().legs().stream()
                .anyMatch(leg -> leg.id().equals(copy.copy().legId()));
    }

    private RollRow row(RollProof proof, DayReport report, boolean hasOthers, Membership reader, boolean paper) {
        Roll roll = proof.roll();
        Integer clips = report.remarks().getOrDefault(roll.id(), Remarks.NONE).clips();
        List<List<Cell>> cells = new ArrayList<>();
        for (Leg leg : report.proofs().legs()) {
            cells.add(cells(proof, leg.id()));
        }
        if (hasOthers) {
            cells.add(proof.copies().stream()
                    .filter(copy -> !servesLeg(copy, report))
                    .map(words::cell)
                    .toList());
        }
        return new RollRow(
                roll.code(),
                href(reader, "rolls/" + roll.id(), paper),
                roll.cameraLetter(),
                roll.cardCode(),
                or(Numbers.plain(roll.minutes())),
                words.size(roll.sizeBytes()),
                roll.sizeBytes() == null ? "" : display.exact(roll.sizeBytes()),
                or(clips == null ? null : display.count(clips)),
                cells);
    }

    private List<Cell> cells(RollProof proof, UUID legId) {
        return proof.copies().stream()
                .filter(copy -> Objects.equals(copy.copy().legId(), legId))
                .map(words::cell)
                .toList();
    }

    private String or(@Nullable String text) {
        return text == null ? display.text("web.none") : text;
    }

    private List<PlanRow> plan(DayReport report) {
        Map<String, List<Roll>> recorded = new TreeMap<>();
        Map<String, DayReport.Planned> planned = new TreeMap<>();
        report.plan().forEach(line -> planned.put(line.camera(), line));
        report.proofs().rolls().stream()
                .map(RollProof::roll)
                .forEach(roll -> recorded.computeIfAbsent(roll.cameraLetter(), camera -> new ArrayList<>())
                        .add(roll));
        List<PlanRow> rows = new ArrayList<>();
        Stream.concat(planned.keySet().stream(), recorded.keySet().stream())
                .distinct()
                .sorted()
                .forEach(camera -> rows.add(planRow(
                        camera,
                        Stream.ofNullable(planned.get(camera)).toList(),
                        recorded.getOrDefault(camera, List.of()))));
        if (rows.size() > 1) {
            rows.add(planRow(
                    "",
                    report.plan(),
                    report.proofs().rolls().stream().map(RollProof::roll).toList()));
        }
        return rows;
    }

    private PlanRow planRow(String camera, List<DayReport.Planned> planned, List<Roll> rolls) {
        BigInteger plannedBytes =
                planned.stream().map(DayReport.Planned::bytes).reduce(BigInteger.ZERO, BigInteger::add);
        BigInteger recordedBytes = bytes(rolls);
        return new PlanRow(
                camera,
                or(Numbers.plain(
                        planned.stream().map(DayReport.Planned::minutes).reduce(BigDecimal.ZERO, BigDecimal::add))),
                or(Numbers.plain(rolls.stream()
                        .map(Roll::minutes)
                        .filter(Objects::nonNull)
                        .reduce(BigDecimal.ZERO, BigDecimal::add))),
                display.size(plannedBytes),
                display.size(recordedBytes),
                plannedBytes.signum() == 0
                        ? display.text("web.none")
                        : display.percent(recordedBytes.doubleValue() / plannedBytes.doubleValue()));
    }

    private String planSays(DayReport report, List<PlanRow> plan) {
        if (plan.isEmpty()) {
            return display.text("report.plan.none");
        }
        PlanRow all = plan.get(plan.size() - 1);
        if (report.plan().isEmpty()) {
            return display.text("report.plan.recorded", all.recordedMinutes(), all.recordedSize());
        }
        return display.text(
                "report.plan.says",
                all.plannedMinutes(),
                all.plannedSize(),
                all.recordedMinutes(),
                all.recordedSize(),
                all.share());
    }

    private List<Line> held(List<RollProof> rolls, Membership reader, boolean paper) {
        return rolls.stream()
                .filter(proof -> proof.standing() != CardStanding.OFF_CARD && proof.standing() != CardStanding.CLEARED)
                .sorted(java.util.Comparator.comparing(RollProof::standing))
                .map(proof -> new Line(
                        proof.roll().cardCode(),
                        href(reader, "rolls/" + proof.roll().id(), paper),
                        display.text(
                                "report.held",
                                proof.roll().code(),
                                proof.holds().isEmpty() ? proof.says() : String.join(" ", proof.holds()))))
                .toList();
    }

    /** A medium is full when no other roll as large as the day's largest fits on it. */
    private List<MediumRow> media(DayReport report) {
        long largest = report.proofs().rolls().stream()
                .map(proof -> proof.roll().sizeBytes())
                .filter(Objects::nonNull)
                .mapToLong(Long::longValue)
                .max()
                .orElse(0);
        return report.media().stream()
                .map(medium -> new MediumRow(
                        medium.code(),
                        display.text("inventory.kind." + medium.kind()),
                        medium.placeName(),
                        display.size(medium.dayBytes()),
                        display.size(medium.usedBytes()),
                        words.size(medium.capacityBytes()),
                        full(medium, largest)))
                .toList();
    }

    private String full(ReportRows.DayMedium medium, long largest) {
        Long capacity = medium.capacityBytes();
        if (capacity == null || capacity == 0) {
            return display.text("web.none");
        }
        String share = display.percent(Math.min(WHOLE, (double) medium.usedBytes() / capacity));
        return capacity - medium.usedBytes() < largest ? display.text("report.media.full", share) : share;
    }

    private SignatureRow signature(SignOff signOff, FactSheet now, Membership reader) {
        List<FactChange> since = now.since(FactSheet.parse(signOff.content()));
        String withdrawn = signOff.withdrawnReason();
        return new SignatureRow(
                signOff.id(),
                signOff.signedByName(),
                words.at(signOff.signedAt(), reader.zone()),
                signOff.remark(),
                changes.headline(since),
                since.stream().map(changes::says).toList(),
                withdrawn == null ? "" : withdrawn,
                signOff.signedBy().equals(reader.personId()));
    }

    private static BigInteger bytes(List<Roll> rolls) {
        return rolls.stream()
                .map(Roll::sizeBytes)
                .filter(Objects::nonNull)
                .map(BigInteger::valueOf)
                .reduce(BigInteger.ZERO, BigInteger::add);
    }

    static @Nullable String href(Membership reader, String page, boolean paper) {
        return paper ? null : reader.path(page);
    }
}
