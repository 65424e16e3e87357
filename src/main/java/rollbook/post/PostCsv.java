package rollbook.post;

import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.jspecify.annotations.Nullable;
import rollbook.shipment.SentItem;
import rollbook.web.Display;
import rollbook.web.SafeCell;

/** The list as CSV: a line for each copy that concerns post, or for a roll without one; instants in UTC. */
final class PostCsv {
    private static final List<String> COLUMNS = List.of(
            "unit",
            "day",
            "date",
            "roll",
            "state",
            "medium",
            "copy",
            "place",
            "shipment",
            "sent",
            "expected",
            "arrived",
            "checked",
            "verdict");

    private final Display display;

    PostCsv(Display display) {
        this.display = display;
    }

    void write(List<PostDay> days, Appendable out) throws IOException {
        out.append('\uFEFF');
        CSVPrinter printer = new CSVPrinter(out, CSVFormat.RFC4180);
        printer.printRecord(COLUMNS.stream().map(column -> display.text("post.column." + column)));
        for (PostDay day : days) {
            for (RollAtPost roll : day.rolls()) {
                if (roll.copies().isEmpty()) {
                    line(printer, day, roll, null);
                }
                for (CopyAtPost copy : roll.copies()) {
                    line(printer, day, roll, copy);
                }
            }
        }
    }

    private void line(CSVPrinter printer, PostDay day, RollAtPost roll, @Nullable CopyAtPost copy) throws IOException {
        List<String> cells = new ArrayList<>(List.of(
                day.unitName(),
                String.valueOf(day.number()),
                day.date().toString(),
                roll.roll().code(),
                word(roll.state().name())));
        if (copy != null) {
            SentItem sent = copy.sent();
            Stay stay = copy.stay();
            Stream.of(
                            copy.copy().itemCode(),
                            word(copy.state().name()),
                            copy.copy().placeName(),
                            sent == null ? "" : String.valueOf(sent.number()),
                            iso(sent == null ? null : sent.sentAt()),
                            iso(sent == null ? null : sent.expectedBy()),
                            iso(stay == null ? null : stay.arrivedAt()),
                            iso(copy.standing().checkedAt()),
                            word(copy.standing().verdict().name()))
                    .forEach(cells::add);
        }
        printer.printRecord(cells.stream().map(cell -> SafeCell.write(Objects.requireNonNull(cell))));
    }

    /** For files, which stay the same whatever language the pages speak. */
    private static String word(String constant) {
        return constant.toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    private String iso(@Nullable Instant instant) {
        return instant == null ? "" : display.iso(instant);
    }
}
