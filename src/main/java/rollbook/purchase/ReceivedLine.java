package rollbook.purchase;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import rollbook.inventory.CodeNumbering;
import rollbook.inventory.ItemDetails;
import rollbook.inventory.NewItem;
import rollbook.inventory.NumberRun;
import rollbook.inventory.Ownership;
import rollbook.label.CodeList;
import rollbook.production.Place;

/** What somebody typed about one line of an order: how many came, under which numbers, and what was wrong. */
final class ReceivedLine {
    private static final Pattern GIGABYTES = Pattern.compile("\\d{1,9}(\\.\\d{1,9})?");
    private static final int GB_DIGITS = 9;
    private static final int LONGEST_WORDS = 300;
    private static final int LONGEST_CODES = 20_000;

    private final String path;
    private final OrderLine line;
    private final ReceiptForm.Line typed;
    private final boolean onlyCount;
    private final TypedFields fields;
    private final List<SerialLines.Line> serials;
    private final int without;
    private final List<Fault> faults = new ArrayList<>();
    private final @Nullable Long capacityBytes;
    private List<String> codes = List.of();

    /** @param index among the form's lines */
    ReceivedLine(int index, OrderLine line, ReceiptForm.Line typed, boolean onlyCount, TypedFields fields) {
        this.path = "lines[" + index + "].";
        this.line = line;
        this.typed = typed;
        this.onlyCount = onlyCount;
        this.fields = fields;
        serials = SerialLines.split(typed.serials());
        without = fields.count(path + "without", typed.without());
        fault("damaged", Fault.Kind.DAMAGED, typed.damaged(), typed.damagedWords(), typed.damagedRemedy());
        fault("wrong", Fault.Kind.WRONG, typed.wrong(), typed.wrongWords(), typed.wrongRemedy());
        checkCounts();
        capacityBytes = capacity();
    }

    private void fault(String field, Fault.Kind kind, String count, String words, String remedy) {
        int items = fields.count(path + field, count);
        fields.atMost(path + field + "Words", words, LONGEST_WORDS);
        Optional<Fault.Remedy> done = List.of(Fault.Remedy.values()).stream()
                .filter(value -> value.name().equals(remedy))
                .findFirst();
        if (items == 0 && !words.isEmpty()) {
            fields.wrong(path + field, "purchase.problem.how-many");
        } else if (items > 0 && words.isEmpty()) {
            fields.wrong(path + field + "Words", "purchase.problem.what-is-wrong");
        } else if (items > 0 && done.isEmpty()) {
            fields.wrong(path + field + "Remedy", "purchase.problem.remedy");
        } else if (items > 0) {
            faults.add(new Fault(kind, items, words, done.orElseThrow()));
        }
    }

    private void checkCounts() {
        if (onlyCount && !serials.isEmpty()) {
            fields.wrong(path + "serials", "purchase.problem.serials-of-counted");
        }
        if (came() > line.left()) {
            fields.wrong(
                    path + (serials.isEmpty() ? "without" : "serials"), "purchase.problem.more-than-left", line.left());
        } else if (entered() > NumberRun.MOST) {
            fields.wrong(path + "without", "purchase.problem.too-many", NumberRun.MOST);
        }
    }

    private @Nullable Long capacity() {
        if (line.capacityBytes() != null || entered() == 0 || !line.kind().hasCapacity()) {
            return line.capacityBytes();
        }
        if (!GIGABYTES.matcher(typed.capacityGb()).matches() || new BigDecimal(typed.capacityGb()).signum() == 0) {
            fields.wrong(path + "capacityGb", "purchase.problem.capacity");
            return null;
        }
        return new BigDecimal(typed.capacityGb()).movePointRight(GB_DIGITS).longValueExact();
    }

    List<String> serials() {
        return serials.stream().map(SerialLines.Line::serial).toList();
    }

    void checkSerials(SerialLines checks) {
        checks.check(serials)
                .forEach(wrong ->
                        fields.wrong(path + "serials", wrong.key(), wrong.args().toArray()));
    }

    /** In order. */
    private int good() {
        return serials.size() + without;
    }

    /** In order, to be entered in the book. */
    private int entered() {
        return onlyCount ? 0 : good();
    }

    int came() {
        return good() + Fault.items(faults);
    }

    /** Items of which nothing is expected any more. */
    int settled() {
        return good() + Fault.credited(faults);
    }

    /** Takes the codes that were typed, before others are given out. */
    void takeCodes(CodeNumbering numbering) {
        if (typed.codes().isEmpty()) {
            return;
        }
        if (entered() == 0) {
            fields.wrong(path + "codes", "purchase.problem.codes-of-none");
            return;
        }
        codes = typedCodes();
        for (String code : codes) {
            if (!ItemDetails.canBeCode(code)) {
                fields.wrong(path + "codes", "purchase.problem.code", code);
            } else if (!numbering.take(code)) {
                fields.wrong(path + "codes", "purchase.problem.code-taken", code);
            }
        }
    }

    private List<String> typedCodes() {
        fields.atMost(path + "codes", typed.codes(), LONGEST_CODES);
        try {
            List<String> read = CodeList.read(typed.codes());
            if (read.size() == entered()) {
                return read;
            }
            if (read.size() == 1) {
                Optional<List<String>> run = CodeNumbering.from(read.get(0), entered());
                if (run.isEmpty()) {
                    fields.wrong(path + "codes", "purchase.problem.code-counts", read.get(0));
                }
                return run.orElse(List.of());
            }
            fields.wrong(path + "codes", "purchase.problem.codes-differ", read.size(), entered());
        } catch (CodeList.Unclear unclear) {
            fields.wrong(path + "codes", "purchase.problem.codes-unclear", unclear.from(), unclear.to());
        }
        return List.of();
    }

    void numberTheRest(CodeNumbering numbering) {
        if (codes.isEmpty() && entered() > 0 && fields.isSound()) {
            codes = numbering.next(line.kind(), line.model(), entered());
        }
    }

    /** @param place where the items are; null if they are only counted */
    NewReceipt.Line asReceived(String supplierName, LocalDate cameOn, @Nullable Place place) {
        if (onlyCount) {
            return new NewReceipt.Line(line.id(), good(), List.of(), faults);
        }
        List<String> numbers = new ArrayList<>(serials());
        numbers.addAll(Collections.nCopies(without, ""));
        List<NewItem> items = new ArrayList<>();
        for (int i = 0; i < codes.size(); i++) {
            items.add(item(codes.get(i), numbers.get(i), supplierName, cameOn, Objects.requireNonNull(place)));
        }
        return new NewReceipt.Line(line.id(), 0, items, faults);
    }

    private NewItem item(String code, String serial, String supplierName, LocalDate cameOn, Place place) {
        Integer weeks = line.hireWeeks();
        ItemDetails details = new ItemDetails(
                code,
                serial,
                line.model(),
                capacityBytes,
                line.readBytesPerSecond(),
                line.writeBytesPerSecond(),
                weeks == null ? Ownership.BOUGHT : Ownership.HIRED,
                supplierName,
                line.unitMinorUnits(),
                weeks == null ? null : cameOn.plusWeeks(weeks),
                line.legId());
        return new NewItem(line.kind(), details, place.id(), "");
    }
}
