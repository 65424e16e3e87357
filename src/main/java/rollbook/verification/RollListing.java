package rollbook.verification;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.springframework.stereotype.Component;
import rollbook.verification.RollBoard.Board;
import rollbook.verification.RollBoard.Row;
import rollbook.web.Choice;
import rollbook.web.Display;
import rollbook.web.Listing;

/** Reads which rolls of a day's matrix an address asks for, and in which order. */
@Component
class RollListing {
    private final Display display;

    RollListing(Display display) {
        this.display = display;
    }

    /** What the matrix may be sorted by; equal ones by code. */
    enum Column {
        ROLL("verification.roll", Comparator.comparing(row -> row.roll().code())),
        CAMERA("verification.camera", Comparator.comparing(row -> row.roll().cameraLetter())),
        CARD("verification.card", Comparator.comparing(row -> row.roll().cardCode())),
        SIZE(
                "verification.size",
                Comparator.comparing(row -> row.roll().sizeBytes(), Comparator.nullsFirst(Comparator.naturalOrder()))),
        /** What a person should look at first. */
        SAYS(
                "verification.rolls.says",
                Comparator.comparing(row -> row.standing().state()));

        private final String key;
        private final Comparator<Row> ascending;

        Column(String key, Comparator<Row> ascending) {
            this.key = key;
            this.ascending = ascending;
        }
    }

    /** The rolls of the board that are asked for. */
    record Asked(Listing listing, List<Row> rows) {}

    Asked read(String path, Map<String, String> address, Board board) {
        Listing listing = Listing.of(path, address);
        listing.also("day");
        String standing = listing.choose(
                "standing",
                display.text("verification.rolls.says"),
                display.text("verification.rolls.any-standing"),
                Arrays.stream(CardStanding.values())
                        .map(one -> new Choice(one.name(), display.text("verification.rolls.standing." + one)))
                        .toList());
        String camera = listing.choose(
                "camera",
                display.text("verification.camera"),
                display.text("verification.rolls.any-camera"),
                cameras(board));
        String text = listing.text("q", display.text("verification.rolls.text")).toLowerCase(Locale.ROOT);
        Listing.Order<Column> order = listing.order(
                Column.values(), new Listing.Order<>(Column.SAYS, false), column -> display.text(column.key));
        return new Asked(
                listing,
                board.rows().stream()
                        .filter(row -> standing.isEmpty()
                                || row.standing().state().name().equals(standing))
                        .filter(row ->
                                camera.isEmpty() || row.roll().cameraLetter().equals(camera))
                        .filter(row -> text.isEmpty() || holds(row, text))
                        .sorted(order.of(order.column().ascending).thenComparing(Column.ROLL.ascending))
                        .toList());
    }

    private static List<Choice> cameras(Board board) {
        return board.rows().stream()
                .map(row -> row.roll().cameraLetter())
                .distinct()
                .sorted()
                .map(letter -> new Choice(letter, letter))
                .toList();
    }

    /** In its code, its card's, or one of a medium with a copy. */
    private static boolean holds(Row row, String text) {
        return row.roll().code().toLowerCase(Locale.ROOT).contains(text)
                || row.roll().cardCode().toLowerCase(Locale.ROOT).contains(text)
                || row.copies()
                        .anyMatch(
                                cell -> cell.itemCode().toLowerCase(Locale.ROOT).contains(text));
    }
}
