package rollbook.label;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import org.springframework.validation.BindingResult;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.production.Membership;
import rollbook.web.Display;

/** Understands what somebody asks to print, and writes what stands on each label. */
@Component
class LabelReading {
    static final int MOST_LABELS = 500;
    static final int MOST_COPIES = 10;
    /** The list stands in the page's address, and servers take addresses of some 8000 characters. */
    static final int LONGEST_LIST = 4000;

    private static final int NAMED = 3;

    private final MediaItems items;
    private final TextFace face;
    private final Display display;

    LabelReading(MediaItems items, TextFace face, Display display) {
        this.items = items;
        this.face = face;
        this.display = display;
    }

    /** Empty, with what is wrong in the result, if it can't be printed. */
    Optional<LabelRun> read(Membership membership, String address, LabelForm form, BindingResult result) {
        List<MediaItem> named = named(membership, form.items(), result);
        Optional<SheetKind> sheet = SheetKind.named(form.sheet());
        if (sheet.isEmpty()) {
            reject(result, "sheet", "label.problem.sheet");
        }
        // Of a printer for single labels nobody asks where the first one goes: what stands there is of another sheet.
        int first = sheet.isEmpty() || sheet.get().single()
                ? 1
                : whole(result, "first", form.first(), sheet.get().grid().labelsPerPage());
        int copies = whole(result, "copies", form.copies(), MOST_COPIES);
        if (named.size() * copies > MOST_LABELS) {
            reject(result, "items", "label.problem.too-many", named.size() * copies, MOST_LABELS);
        }
        if (result.hasErrors()) {
            return Optional.empty();
        }
        LabelLayout layout = LabelLayout.of(sheet.orElseThrow().grid());
        List<Label> labels = named.stream()
                .map(item -> label(membership, address, layout, item))
                .flatMap(label -> Collections.nCopies(copies, label).stream())
                .toList();
        return Optional.of(new LabelRun(labels, sheet.get(), first));
    }

    private List<MediaItem> named(Membership membership, String typed, BindingResult result) {
        List<String> codes = codes(typed, result);
        if (codes.size() > MOST_LABELS) {
            reject(result, "items", "label.problem.too-many", codes.size(), MOST_LABELS);
        }
        if (result.hasFieldErrors("items")) {
            return List.of();
        }
        Map<String, MediaItem> known = items.findByCodes(membership.productionId(), codes).stream()
                .collect(Collectors.toMap(
                        item -> item.code().toUpperCase(Locale.ROOT),
                        Function.identity(),
                        (one, same) -> one,
                        HashMap::new));
        items.findBySerials(membership.productionId(), unknown(codes, known))
                .forEach(item -> known.put(item.serial().toUpperCase(Locale.ROOT), item));
        List<String> unknown = unknown(codes, known);
        if (!unknown.isEmpty()) {
            String first = String.join(", ", unknown.subList(0, Math.min(NAMED, unknown.size())));
            reject(result, "items", "label.problem.unknown", first, Math.max(0, unknown.size() - NAMED));
        }
        return codes.stream()
                .filter(known::containsKey)
                .map(known::get)
                .distinct()
                .toList();
    }

    private static List<String> unknown(List<String> codes, Map<String, MediaItem> known) {
        return codes.stream().filter(code -> !known.containsKey(code)).toList();
    }

    private List<String> codes(String typed, BindingResult result) {
        if (typed.length() > LONGEST_LIST) {
            reject(result, "items", "label.problem.too-long", LONGEST_LIST);
            return List.of();
        }
        try {
            List<String> codes = CodeList.read(typed);
            if (codes.isEmpty()) {
                reject(result, "items", "label.problem.no-items");
            }
            return codes;
        } catch (CodeList.Unclear unclear) {
            reject(result, "items", "label.problem.run", unclear.from(), unclear.to(), MOST_LABELS);
            return List.of();
        }
    }

    private Label label(Membership membership, String address, LabelLayout layout, MediaItem item) {
        String kind = display.text("inventory.kind." + item.kind());
        String owner = "label.owner." + item.ownership();
        String what = item.capacityBytes() == null
                ? kind
                : display.text("label.what", kind, display.size(item.capacityBytes()));
        String whose = item.supplier().isEmpty() ? display.text(owner) : display.text(owner + ".from", item.supplier());
        double width = layout.lineWidth();
        List<String> lines = new ArrayList<>(face.lines(what, width, 1));
        // The serial number takes the second line of a long model.
        boolean numbered = !item.serial().isEmpty();
        lines.addAll(face.lines(item.model(), width, LabelLayout.MOST_MODEL_LINES - (numbered ? 1 : 0)));
        if (numbered) {
            lines.addAll(face.lines(display.text("label.serial", item.serial()), width, 1));
        }
        lines.addAll(face.lines(whose, width, LabelLayout.LINES_BELOW - lines.size() - 1));
        lines.addAll(face.lines(membership.productionName(), width, 1));
        return new Label(
                item.code(),
                layout.lines(item.code()),
                QrSymbol.of(LabelAddress.of(address, membership, item.code())),
                lines);
    }

    private static int whole(BindingResult result, String field, String typed, int most) {
        if (typed.matches("\\d{1,4}") && Integer.parseInt(typed) >= 1 && Integer.parseInt(typed) <= most) {
            return Integer.parseInt(typed);
        }
        reject(result, field, "label.problem.whole", most);
        return 1;
    }

    private static void reject(BindingResult result, String field, String key, Object... args) {
        result.rejectValue(field, key, args, null);
    }
}
