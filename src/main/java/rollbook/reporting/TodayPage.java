package rollbook.reporting;

import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.forecast.CoverPicture;
import rollbook.forecast.Forecasts;
import rollbook.forecast.StorageOutlook;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.verification.ProofSummaries;
import rollbook.verification.ProofSummary;
import rollbook.verification.Rechecks;
import rollbook.web.Display;

/** The one page that answers each role's question; every answer leads to where it is dealt with. */
@Component
class TodayPage {
    static final int NAMED = 5;
    private static final int DUE_WITHIN_DAYS = 7;

    private final ProofSummaries proofs;
    private final Rechecks rechecks;
    private final Forecasts forecasts;
    private final OfficeRows rows;
    private final OfficeAnswers office;
    private final Display display;
    private final Clock clock;

    TodayPage(
            ProofSummaries proofs,
            Rechecks rechecks,
            Forecasts forecasts,
            OfficeRows rows,
            OfficeAnswers office,
            Display display,
            Clock clock) {
        this.proofs = proofs;
        this.rechecks = rechecks;
        this.forecasts = forecasts;
        this.rows = rows;
        this.office = office;
        this.display = display;
        this.clock = clock;
    }

    /** @param details further lines, each leading somewhere of its own */
    record Answer(String question, String answer, String href, String action, List<Detail> details) {}

    record Detail(String text, String href) {}

    record Section(Role role, List<Answer> answers) {}

    /**
     * @param cover how far storage reaches, for those whose question it is; else null
     * @param sections the viewer's own first
     */
    record View(
            String sentence, List<Detail> alarms, @Nullable CoverPicture cover, List<Section> sections) {}

    View view(Membership viewer) {
        ProofSummary proof = proofs.of(viewer.productionId());
        Optional<StorageOutlook> outlook = forecasts.latest(viewer.productionId());
        LocalDate today = LocalDate.ofInstant(clock.instant(), viewer.zone());
        List<OfficeRows.Row> all = rows.of(viewer.productionId(), today, today.plusDays(DUE_WITHIN_DAYS + 1));
        List<Section> sections = new ArrayList<>();
        sections.add(new Section(Role.WRANGLER, wrangler(viewer, proof)));
        sections.add(new Section(Role.OFFICE, office.answers(viewer, outlook, all)));
        sections.add(new Section(Role.POST, post(viewer, proof, outlook, office.arrivals(viewer, all, today))));
        Predicate<Section> own = section -> viewer.roles().contains(section.role());
        List<Section> ownFirst = new ArrayList<>(sections.stream().filter(own).toList());
        ownFirst.addAll(sections.stream().filter(own.negate()).toList());
        return new View(
                sentence(ownFirst.get(0)),
                alarms(viewer, proof),
                viewer.roles().contains(Role.POST) || viewer.roles().contains(Role.OFFICE)
                        ? outlook.map(StorageOutlook::cover).orElse(null)
                        : null,
                ownFirst);
    }

    private static String sentence(Section first) {
        return first.answers().get(0).answer();
    }

    /** What comes before everything else, whoever looks. */
    List<Detail> alarms(Membership viewer, ProofSummary proof) {
        Stream<Detail> asked = proof.asked().stream()
                .map(override -> new Detail(
                        display.text("reporting.override.asked", override.askedByName(), override.cardCode()),
                        viewer.path("overrides/" + override.requestId())));
        Stream<Detail> alarms = proof.alarms().stream()
                .map(alarm -> new Detail(
                        display.text(
                                alarm.cardErased() ? "reporting.alarm.erased" : "reporting.alarm.cleared",
                                alarm.rollCode(),
                                alarm.itemCode()),
                        viewer.path("re-checks")));
        return Stream.concat(alarms, asked).toList();
    }

    private List<Answer> wrangler(Membership viewer, ProofSummary proof) {
        return List.of(
                new Answer(
                        display.text("reporting.ask.hand-back"),
                        handBack(proof),
                        viewer.path("rolls"),
                        display.text("reporting.go.rolls"),
                        Stream.of(proof.cleared(), proof.ready(), proof.held())
                                .flatMap(some -> lines(viewer, some).stream())
                                .toList()),
                new Answer(
                        display.text("reporting.ask.wrong"),
                        proof.bad().isEmpty()
                                ? display.text("reporting.wrong.none")
                                : display.text("reporting.wrong", proof.bad().size()),
                        viewer.path("rolls"),
                        display.text("reporting.go.rolls"),
                        lines(viewer, proof.bad())),
                new Answer(
                        display.text("reporting.ask.waiting"),
                        waiting(proof),
                        viewer.path("documents"),
                        display.text("reporting.go.documents"),
                        lines(viewer, proof.exposed())),
                new Answer(
                        display.text("reporting.ask.turnaround"),
                        display.text("reporting.turnaround"),
                        viewer.path("turnaround"),
                        display.text("reporting.go.turnaround"),
                        List.of()));
    }

    String handBack(ProofSummary proof) {
        List<String> parts = new ArrayList<>();
        if (!proof.cleared().isEmpty()) {
            parts.add(
                    display.text("reporting.hand-back.cleared", proof.cleared().size()));
        }
        if (!proof.ready().isEmpty()) {
            parts.add(display.text("reporting.hand-back.ready", proof.ready().size(), cards(proof.ready())));
        }
        int held = proof.held().size() + proof.bad().size();
        if (held > 0) {
            parts.add(display.text("reporting.hand-back.held", held));
        }
        return parts.isEmpty() ? display.text("reporting.hand-back.none") : String.join(" ", parts);
    }

    static String cards(List<ProofSummary.RollLine> lines) {
        String named =
                lines.stream().limit(NAMED).map(ProofSummary.RollLine::cardCode).collect(Collectors.joining(", "));
        return lines.size() > NAMED ? named + "…" : named;
    }

    private String waiting(ProofSummary proof) {
        List<String> parts = new ArrayList<>();
        if (!proof.exposed().isEmpty()) {
            parts.add(display.text("reporting.waiting.exposed", proof.exposed().size()));
        }
        if (proof.documentsUnassigned() > 0) {
            parts.add(display.text("reporting.waiting.unassigned", proof.documentsUnassigned()));
        }
        if (proof.documentsRejected() > 0) {
            parts.add(display.text("reporting.waiting.rejected", proof.documentsRejected()));
        }
        return parts.isEmpty() ? display.text("reporting.waiting.none") : String.join(" ", parts);
    }

    private List<Detail> lines(Membership viewer, List<ProofSummary.RollLine> lines) {
        return lines.stream()
                .limit(NAMED)
                .map(line -> new Detail(
                        display.text("reporting.roll-line", line.rollCode(), line.cardCode(), line.says()),
                        viewer.path("rolls/" + line.rollId())))
                .toList();
    }

    private List<Answer> post(Membership viewer, ProofSummary proof, Optional<StorageOutlook> outlook, Answer arrived) {
        return List.of(
                new Answer(
                        display.text("reporting.ask.last"),
                        outlook.map(StorageOutlook::sentence)
                                .orElseGet(() -> display.text("reporting.storage.unknown")),
                        viewer.path("storage"),
                        display.text("reporting.go.storage"),
                        List.of()),
                arrived,
                new Answer(
                        display.text("reporting.ask.proven"),
                        proof.copies() == 0
                                ? display.text("reporting.proven.none")
                                : display.text("reporting.proven", proof.copiesProven(), proof.copies(), proof.rolls()),
                        viewer.path("safety"),
                        display.text("reporting.go.safety"),
                        withoutProof(viewer, proof)),
                new Answer(
                        display.text("reporting.ask.media"),
                        media(proof),
                        viewer.path("media"),
                        display.text("reporting.go.media"),
                        mediaLines(viewer, proof)),
                new Answer(
                        display.text("reporting.ask.recheck"),
                        recheck(rechecks.pressing(viewer)),
                        viewer.path("re-checks"),
                        display.text("reporting.go.re-checks"),
                        List.of()));
    }

    /** Every one of them, for good. */
    private List<Detail> withoutProof(Membership viewer, ProofSummary proof) {
        return proof.withoutProof().stream()
                .map(override -> new Detail(
                        display.text(
                                "reporting.override.approved",
                                override.rollCode(),
                                override.askedByName(),
                                override.approvedByName()),
                        viewer.path("rolls/" + override.rollId())))
                .toList();
    }

    private String media(ProofSummary proof) {
        long cleared =
                proof.media().stream().filter(ProofSummary.Medium::cleared).count();
        long ready = proof.media().size() - cleared;
        return proof.media().isEmpty()
                ? display.text("reporting.media.none")
                : display.text("reporting.media", ready, cleared);
    }

    private List<Detail> mediaLines(Membership viewer, ProofSummary proof) {
        return proof.media().stream()
                .limit(NAMED)
                .map(medium -> new Detail(
                        display.text(
                                medium.cleared() ? "reporting.media.cleared" : "reporting.media.ready",
                                medium.itemCode()),
                        viewer.path("media/" + medium.itemId() + (medium.cleared() ? "/erase" : "/clear"))))
                .toList();
    }

    private String recheck(Rechecks.Pressing pressing) {
        if (pressing.mostPressing() == null) {
            return display.text("reporting.recheck.none");
        }
        return pressing.overdue() + pressing.due() == 0
                ? display.text("reporting.recheck.fine")
                : display.text("reporting.recheck", pressing.overdue(), pressing.due(), pressing.mostPressing());
    }
}
