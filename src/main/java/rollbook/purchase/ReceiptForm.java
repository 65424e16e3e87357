package rollbook.purchase;

import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What somebody types about what came, as typed, so that nothing of it is lost while something is wrong.
 *
 * @param receipt made with the empty form: what is sent twice is one receipt
 * @param version of the order that the person has seen
 * @param onlyCount whether the items get no entry in the book
 */
record ReceiptForm(
        String receipt,
        String version,
        String cameOn,
        String place,
        @Nullable Boolean onlyCount,
        String restExpectedOn,
        String note,
        List<Line> lines) {

    ReceiptForm {
        receipt = typed(receipt);
        version = typed(version);
        cameOn = typed(cameOn);
        onlyCount = Boolean.TRUE.equals(onlyCount);
        place = typed(place);
        restExpectedOn = typed(restExpectedOn);
        note = typed(note);
        lines = lines == null
                ? List.of()
                : lines.stream().filter(Objects::nonNull).toList();
    }

    /**
     * @param line id of the order's line
     * @param serials one a line
     * @param without how many came that have no serial number
     * @param codes the first code or all of them; empty for the next free ones
     * @param capacityGb asked only where the order doesn't say it
     */
    record Line(
            String line,
            String serials,
            String without,
            String codes,
            String capacityGb,
            String damaged,
            String damagedWords,
            String damagedRemedy,
            String wrong,
            String wrongWords,
            String wrongRemedy) {
        Line {
            line = typed(line);
            serials = serials == null ? "" : serials;
            without = typed(without);
            codes = typed(codes);
            capacityGb = typed(capacityGb);
            damaged = typed(damaged);
            damagedWords = typed(damagedWords);
            damagedRemedy = typed(damagedRemedy);
            wrong = typed(wrong);
            wrongWords = typed(wrongWords);
            wrongRemedy = typed(wrongRemedy);
        }

        static Line blank(OrderLine line) {
            return new Line(
                    line.id().toString(),
                    "",
                    "",
                    "",
                    "",
                    "",
                    "",
                    Fault.Remedy.REPLACED.name(),
                    "",
                    "",
                    Fault.Remedy.REPLACED.name());
        }

        /** Whether anything is typed about broken or wrong items. */
        boolean tellsOfFaults() {
            return !(damaged + damagedWords + wrong + wrongWords).isEmpty();
        }
    }

    /** With a line for each that something is still to come of. */
    static ReceiptForm blank(PurchaseOrder order, String today, String place) {
        return new ReceiptForm(
                UUID.randomUUID().toString(),
                Integer.toString(order.version()),
                today,
                place,
                false,
                "",
                "",
                order.lines().stream()
                        .filter(line -> line.left() > 0)
                        .map(Line::blank)
                        .toList());
    }

    private static String typed(@Nullable String text) {
        return text == null ? "" : text.strip();
    }
}
