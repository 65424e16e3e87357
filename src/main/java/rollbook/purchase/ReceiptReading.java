package rollbook.purchase;

import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.validation.BindingResult;
import rollbook.inventory.CodeNumbering;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.production.Membership;
import rollbook.production.Place;
import rollbook.production.Places;
import rollbook.web.NotFoundException;

/** Understands what somebody typed about what came of an order; what is wrong is told at its field. */
@Component
class ReceiptReading {
    static final int LONGEST_NOTE = 500;

    private final MediaItems items;
    private final Places places;
    private final Clock clock;

    ReceiptReading(MediaItems items, Places places, Clock clock) {
        this.items = items;
        this.places = places;
        this.clock = clock;
    }

    /** Empty, with what is wrong in the result, if it can't be kept. */
    Optional<NewReceipt> read(Membership by, PurchaseOrder order, ReceiptForm form, BindingResult result) {
        TypedFields fields = new TypedFields(result);
        LocalDate cameOn = cameOn(by, order, form, fields);
        Place place = place(by, form, fields);
        fields.atMost("note", form.note(), LONGEST_NOTE);
        List<ReceivedLine> typed = lines(by, order, form, fields);
        CodeNumbering numbering = new CodeNumbering(items.list(by.productionId()));
        typed.forEach(line -> line.takeCodes(numbering));
        typed.forEach(line -> line.numberTheRest(numbering));
        LocalDate rest = rest(order, form, fields, cameOn, typed);
        if (fields.isSound() && typed.stream().allMatch(line -> line.came() == 0)) {
            result.reject("purchase.problem.nothing-came");
        }
        if (!fields.isSound() || cameOn == null) {
            return Optional.empty();
        }
        List<NewReceipt.Line> lines = typed.stream()
                .filter(line -> line.came() > 0)
                .map(line -> line.asReceived(order.supplierName(), cameOn, place))
                .toList();
        return Optional.of(new NewReceipt(id(form), cameOn, form.note(), rest, lines));
    }

    private @Nullable LocalDate cameOn(Membership by, PurchaseOrder order, ReceiptForm form, TypedFields fields) {
        LocalDate cameOn = fields.date("cameOn", form.cameOn()).orElse(null);
        LocalDate orderedOn = order.orderedOn();
        if (cameOn != null && orderedOn != null && cameOn.isBefore(orderedOn)) {
            fields.wrong("cameOn", "purchase.problem.came-before");
        } else if (cameOn != null && cameOn.isAfter(LocalDate.now(clock.withZone(by.zone())))) {
            fields.wrong("cameOn", "purchase.problem.not-yet");
        }
        return cameOn;
    }

    private @Nullable Place place(Membership by, ReceiptForm form, TypedFields fields) {
        Optional<Place> place = places.list(by.productionId()).stream()
                .filter(candidate -> candidate.id().toString().equals(form.place()))
                .findFirst();
        if (place.isEmpty() && !form.onlyCount()) {
            fields.wrong("place", "purchase.problem.place");
        }
        return place.orElse(null);
    }

    private List<ReceivedLine> lines(Membership by, PurchaseOrder order, ReceiptForm form, TypedFields fields) {
        List<ReceivedLine> lines = new ArrayList<>();
        for (int i = 0; i < form.lines().size(); i++) {
            ReceiptForm.Line typed = form.lines().get(i);
            OrderLine line = order.lines().stream()
                    .filter(candidate -> candidate.id().toString().equals(typed.line()))
                    .findFirst()
                    .orElseThrow(NotFoundException::new);
            lines.add(new ReceivedLine(i, line, typed, form.onlyCount(), fields));
        }
        SerialLines serials = new SerialLines(known(by, lines));
        lines.forEach(line -> line.checkSerials(serials));
        return lines;
    }

    /** Which items have these serial numbers already: their codes by the numbers in capitals. */
    private Map<String, String> known(Membership by, List<ReceivedLine> lines) {
        List<String> serials =
                lines.stream().flatMap(line -> line.serials().stream()).toList();
        return items.findBySerials(by.productionId(), serials).stream()
                .collect(Collectors.toMap(item -> item.serial().toUpperCase(Locale.ROOT), MediaItem::code));
    }

    /** When the rest comes, if there is one and the supplier said so. */
    private static @Nullable LocalDate rest(
            PurchaseOrder order,
            ReceiptForm form,
            TypedFields fields,
            @Nullable LocalDate cameOn,
            List<ReceivedLine> lines) {
        if (form.restExpectedOn().isEmpty()) {
            return null;
        }
        LocalDate rest = fields.date("restExpectedOn", form.restExpectedOn()).orElse(null);
        int settled = lines.stream().mapToInt(ReceivedLine::settled).sum();
        if (rest != null && settled >= order.left()) {
            fields.wrong("restExpectedOn", "purchase.problem.no-rest");
        } else if (rest != null && rest.isBefore(Objects.requireNonNullElse(cameOn, rest))) {
            fields.wrong("restExpectedOn", "purchase.problem.rest-before");
        }
        return rest;
    }

    private static UUID id(ReceiptForm form) {
        try {
            return UUID.fromString(form.receipt());
        } catch (IllegalArgumentException madeUp) {
            return UUID.randomUUID();
        }
    }
}
