package rollbook.reporting;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import rollbook.forecast.StorageOutlook;
import rollbook.production.MediaKind;
import rollbook.production.Membership;
import rollbook.web.Display;

/** Answers the office's questions on today's page. */
@Component
class OfficeAnswers {
    private final Display display;

    OfficeAnswers(Display display) {
        this.display = display;
    }

    List<TodayPage.Answer> answers(Membership viewer, Optional<StorageOutlook> outlook, List<OfficeRows.Row> all) {
        List<OfficeRows.Row> proposed = about(all, OfficeRows.About.PROPOSAL);
        return List.of(
                new TodayPage.Answer(
                        display.text("reporting.ask.order"),
                        outlook.map(this::orders).orElseGet(() -> display.text("reporting.storage.unknown")),
                        viewer.path("storage"),
                        display.text("reporting.go.storage"),
                        outlook.map(known -> orderLines(viewer, known)).orElse(List.of())),
                orders(viewer, all),
                new TodayPage.Answer(
                        display.text("reporting.ask.proposed"),
                        display.text("reporting.proposed", proposed.size()),
                        viewer.path("turnaround/proposals"),
                        display.text("reporting.go.proposals"),
                        named(proposed, row -> proposed(viewer, row))),
                new TodayPage.Answer(
                        display.text("reporting.ask.own"),
                        owned(about(all, OfficeRows.About.MEDIA)),
                        viewer.path("media"),
                        display.text("reporting.go.media"),
                        named(
                                about(all, OfficeRows.About.DUE_BACK),
                                row -> new TodayPage.Detail(
                                        display.text("reporting.due-back", row.name(), display.date(row.date())),
                                        viewer.path("media/" + row.id())))));
    }

    private TodayPage.Answer orders(Membership viewer, List<OfficeRows.Row> all) {
        List<OfficeRows.Row> toApprove = about(all, OfficeRows.About.TO_APPROVE);
        List<OfficeRows.Row> awaited = about(all, OfficeRows.About.AWAITED);
        return new TodayPage.Answer(
                display.text("reporting.ask.orders"),
                display.text("reporting.orders", toApprove.size(), awaited.size()),
                viewer.path("orders"),
                display.text("reporting.go.orders"),
                Stream.concat(
                                named(toApprove, row -> orderLine(viewer, "reporting.orders.to-approve", row)).stream(),
                                named(awaited, row -> orderLine(viewer, "reporting.orders.awaited", row)).stream())
                        .toList());
    }

    private TodayPage.Detail orderLine(Membership viewer, String key, OfficeRows.Row order) {
        return new TodayPage.Detail(
                display.text(key, order.name(), order.date() == null ? "" : display.date(order.date())),
                viewer.path("orders/" + order.id()));
    }

    /** Whether all that was sent has arrived. */
    TodayPage.Answer arrivals(Membership viewer, List<OfficeRows.Row> all, LocalDate today) {
        List<OfficeRows.Row> underWay = about(all, OfficeRows.About.UNDER_WAY);
        long late = underWay.stream()
                .filter(row -> row.date() != null && row.date().isBefore(today))
                .count();
        return new TodayPage.Answer(
                display.text("reporting.ask.arrived"),
                display.text("reporting.arrived", underWay.size(), late),
                viewer.path("post"),
                display.text("reporting.go.post"),
                named(
                        underWay,
                        row -> new TodayPage.Detail(
                                row.date() == null
                                        ? display.text("reporting.under-way", row.name())
                                        : display.text(
                                                "reporting.under-way.expected", row.name(), display.date(row.date())),
                                viewer.path("shipments/" + row.id()))));
    }

    private static List<OfficeRows.Row> about(List<OfficeRows.Row> all, OfficeRows.About about) {
        return all.stream().filter(row -> row.about() == about).toList();
    }

    private static List<TodayPage.Detail> named(
            List<OfficeRows.Row> rows, Function<OfficeRows.Row, TodayPage.Detail> words) {
        return rows.stream().limit(TodayPage.NAMED).map(words).toList();
    }

    private TodayPage.Detail proposed(Membership viewer, OfficeRows.Row proposal) {
        Long cost = proposal.costMinorUnits();
        String date = display.shortDate(proposal.date());
        return new TodayPage.Detail(
                cost == null
                        ? display.text("reporting.proposal", proposal.name(), date)
                        : display.text(
                                "reporting.proposal.cost",
                                proposal.name(),
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

    private String owned(List<OfficeRows.Row> media) {
        if (media.isEmpty()) {
            return display.text("reporting.own.nothing");
        }
        String kinds = media.stream()
                .sorted(Comparator.comparing(row -> MediaKind.valueOf(row.name())))
                .map(row -> display.text("reporting.own." + row.name(), row.count()))
                .collect(Collectors.joining(", "));
        long blank = media.stream().mapToLong(OfficeRows.Row::blank).sum();
        return display.text("reporting.own", kinds, blank);
    }
}
