package rollbook.report;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import rollbook.web.Display;

/** Says what a report tells otherwise than when it was signed. */
@Component
class FactChangeWords {
    private final Display display;

    FactChangeWords(Display display) {
        this.display = display;
    }

    /** What the weightiest change is, and how many more there are. */
    String headline(List<FactChange> changes) {
        if (changes.isEmpty()) {
            return display.text("report.signed.nothing");
        }
        FactChange first = changes.get(0);
        String before = switch (first.weight()) {
            case VERDICT -> display.text("report.signed.before.VERDICT", subject(first.fact()));
            case ALARM -> display.text("report.signed.before.ALARM", says(first));
            case OTHERWISE -> display.text("report.signed.before.OTHERWISE", subject(first.fact()));
            case MORE -> display.text("report.signed.before.MORE", changes.size());
        };
        return first.weight() == FactChange.Weight.MORE || changes.size() == 1
                ? before
                : before + " " + display.text("report.signed.more", changes.size() - 1);
    }

    String says(FactChange change) {
        Fact fact = change.fact();
        return switch (fact.kind()) {
            case COPY -> copy(change);
            case ACT ->
                display.text(
                        "report.change.act." + constant(fact.at(Column.STATE)),
                        fact.at(Column.ITEM),
                        fact.at(Column.ROLL),
                        fact.at(Column.BY));
            case ROLL -> roll(change);
            case REMARK ->
                display.text(
                        change.isGone() ? "report.change.remark-gone" : "report.change.remark",
                        fact.at(Column.ROLL),
                        fact.at(Column.KIND));
            default -> whole(change);
        };
    }

    private String copy(FactChange change) {
        Fact before = change.before();
        Fact after = change.after();
        if (before == null || after == null) {
            return display.text(
                    before == null ? "report.change.copy-came" : "report.change.copy-gone",
                    subject(change.fact()),
                    change.fact().at(Column.VERDICT));
        }
        return change.columns().contains(Column.VERDICT)
                ? display.text(
                        "report.change.verdict", subject(after), before.at(Column.VERDICT), after.at(Column.VERDICT))
                : display.text(
                        "report.change.copy",
                        subject(after),
                        after.at(Column.VERDICT),
                        pieces(before, after, change.columns()));
    }

    private String roll(FactChange change) {
        Fact before = change.before();
        Fact after = change.after();
        if (before != null && after != null && change.weight() == FactChange.Weight.MORE) {
            return change.columns().contains(Column.STATE)
                    ? display.text(
                            "report.change.card", subject(after), before.at(Column.STATE), after.at(Column.STATE))
                    : display.text("report.change.holds", subject(after));
        }
        return whole(change);
    }

    private String whole(FactChange change) {
        Fact before = change.before();
        Fact after = change.after();
        if (before == null || after == null) {
            return display.text(before == null ? "report.change.came" : "report.change.gone", subject(change.fact()));
        }
        return display.text("report.change.otherwise", subject(after), pieces(before, after, change.columns()));
    }

    private String pieces(Fact before, Fact after, List<Column> columns) {
        return columns.stream()
                .map(column -> display.text(
                        "report.change.piece",
                        display.text("report.column." + column),
                        value(before, column),
                        value(after, column)))
                .collect(Collectors.joining("; "));
    }

    /** A digest is long, and its beginning tells it from another one. */
    private String value(Fact fact, Column column) {
        String value = fact.at(column);
        boolean digest = column == Column.SHA256 || column == Column.REFERENCE_SHA256;
        return value.isEmpty() ? display.text("web.none") : digest ? value.substring(0, 12) + "…" : value;
    }

    private String subject(Fact fact) {
        return switch (fact.kind()) {
            case ROLL, REMARK -> fact.at(Column.ROLL);
            case COPY -> display.text("report.subject.copy", fact.at(Column.ROLL), fact.at(Column.ITEM));
            case PLAN -> display.text("report.subject.plan", fact.at(Column.CAMERA));
            default -> display.text("report.subject.day");
        };
    }

    private static String constant(String words) {
        return words.toUpperCase(Locale.ROOT).replace(' ', '_');
    }
}
