package rollbook.reporting;

import java.time.Clock;
import java.time.LocalDate;
import java.util.Currency;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import rollbook.forecast.StorageOutlook;
import rollbook.inventory.CardState;
import rollbook.inventory.Condition;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.production.MediaKind;
import rollbook.production.Membership;
import rollbook.scenario.OrderProposal;
import rollbook.scenario.OrderProposals;
import rollbook.web.Display;

/** Answers the office's questions on today's page. */
@Component
class OfficeAnswers {
    private static final int DUE_WITHIN_DAYS = 7;

    private final MediaItems items;
    private final OrderProposals proposals;
    private final Display display;
    private final Clock clock;

    OfficeAnswers(MediaItems items, OrderProposals proposals, Display display, Clock clock) {
        this.items = items;
        this.proposals = proposals;
        this.display = display;
        this.clock = clock;
    }

    List<TodayPage.Answer> answers(Membership viewer, Optional<StorageOutlook> outlook) {
        List<MediaItem> media = items.list(viewer.productionId());
        List<OrderProposal> proposed = proposals.open(viewer.productionId());
        return List.of(
                new TodayPage.Answer(
                        display.text("reporting.ask.order"),
                        outlook.map(this::orders).orElseGet(() -> display.text("reporting.storage.unknown")),
                        viewer.path("storage"),
                        display.text("reporting.go.storage"),
                        outlook.map(known -> orderLines(viewer, known)).orElse(List.of())),
                new TodayPage.Answer(
                        display.text("reporting.ask.proposed"),
                        display.text("reporting.proposed", proposed.size()),
                        viewer.path("turnaround/proposals"),
                        display.text("reporting.go.proposals"),
                        proposed.stream()
                                .limit(TodayPage.NAMED)
                                .map(proposal -> proposed(viewer, proposal))
                                .toList()),
                new TodayPage.Answer(
                        display.text("reporting.ask.own"),
                        owned(media),
                        viewer.path("media"),
                        display.text("reporting.go.media"),
                        dueBack(viewer, media)));
    }

    private TodayPage.Detail proposed(Membership viewer, OrderProposal proposal) {
        Long cost = proposal.costMinorUnits();
        String date = display.shortDate(proposal.neededBy());
        return new TodayPage.Detail(
                cost == null
                        ? display.text("reporting.proposal", proposal.scenarioName(), date)
                        : display.text(
                                "reporting.proposal.cost",
                                proposal.scenarioName(),
                                date,
                                display.money(cost, Currency.getInstance(viewer.currency()))),
                viewer.path("turnaround/proposals"));
    }

    private String orders(StorageOutlook outlook) {
        long flags = outlook.legs().stream()
                .filter(StorageOutlook.Leg::waitsForSomebody)
                .count();
        return flags == 0 ? display.text("reporting.order.none") : display.text("reporting.order", flags);
    }

    private List<TodayPage.Detail> orderLines(Membership viewer, StorageOutlook outlook) {
        return outlook.legs().stream()
                .filter(StorageOutlook.Leg::waitsForSomebody)
                .map(leg -> new TodayPage.Detail(leg.sentence(), viewer.path("storage")))
                .toList();
    }

    private String owned(List<MediaItem> media) {
        if (media.isEmpty()) {
            return display.text("reporting.own.nothing");
        }
        Map<MediaKind, Long> byKind = media.stream()
                .filter(item -> item.condition() != Condition.RETURNED && item.condition() != Condition.RETIRED)
                .collect(Collectors.groupingBy(
                        MediaItem::kind, () -> new EnumMap<>(MediaKind.class), Collectors.counting()));
        String kinds = byKind.entrySet().stream()
                .map(kind -> display.text("reporting.own." + kind.getKey().name(), kind.getValue()))
                .collect(Collectors.joining(", "));
        long blank = media.stream()
                .filter(item -> item.usable() && item.cardState() == CardState.BLANK)
                .count();
        return display.text("reporting.own", kinds, blank);
    }

    private List<TodayPage.Detail> dueBack(Membership viewer, List<MediaItem> media) {
        LocalDate today = LocalDate.ofInstant(clock.instant(), viewer.zone());
        return media.stream()
                .filter(item -> item.hiredUntil() != null
                        && item.condition() != Condition.RETURNED
                        && item.hiredUntil().isBefore(today.plusDays(DUE_WITHIN_DAYS + 1)))
                .limit(TodayPage.NAMED)
                .map(item -> new TodayPage.Detail(
                        display.text("reporting.due-back", item.code(), display.date(item.hiredUntil())),
                        viewer.path("media/" + item.id())))
                .toList();
    }
}
