package rollbook.hire;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.validation.BindingResult;
import rollbook.hire.Candidates.Model;
import rollbook.label.CodeList;
import rollbook.quantity.Money;

/** Understands which items a form names by their codes, and what a week of each costs. */
final class ItemsReading {
    private static final String ITEMS = "items";

    private final Candidates candidates;
    private final BindingResult result;

    ItemsReading(Candidates candidates, BindingResult result) {
        this.candidates = candidates;
        this.result = result;
    }

    /** What is wrong goes to the field; then what is understood comes back, which nobody should use. */
    List<Hired> named(String field, String codes) {
        List<Hired> named = new ArrayList<>();
        List<String> unknown = new ArrayList<>();
        try {
            for (String code : CodeList.read(codes)) {
                candidates.ofCode(code).ifPresentOrElse(named::add, () -> unknown.add(code));
            }
        } catch (CodeList.Unclear unclear) {
            wrong(field, "hire.form.items.unclear", unclear.from(), unclear.to());
        }
        if (!unknown.isEmpty()) {
            wrong(field, "hire.form.items.unknown", String.join(", ", unknown), unknown.size());
        }
        return named;
    }

    /**
     * What a week costs of each item that is named, in the currency's smallest unit.
     *
     * @param besides items that the form needn't name
     */
    Map<UUID, Long> rates(String codes, Collection<Hired> besides, List<ModelForm> models, Money money) {
        if (result.hasErrors()) {
            return Map.of();
        }
        List<Hired> items = new ArrayList<>(named(ITEMS, codes));
        besides.stream().filter(hired -> !items.contains(hired)).forEach(items::add);
        if (items.isEmpty() && !result.hasErrors()) {
            wrong(ITEMS, "hire.form.items.none");
        }
        Map<UUID, Long> rates = new LinkedHashMap<>();
        List<@Nullable Model> alike = candidates.inOrderOf(models);
        for (int at = 0; at < alike.size(); at++) {
            Model model = alike.get(at);
            List<Hired> chosen = model == null
                    ? List.of()
                    : items.stream()
                            .filter(hired -> model.has(hired.item().id()))
                            .toList();
            if (model != null && !chosen.isEmpty()) {
                price(model, at, at < models.size() ? models.get(at).weekPrice() : null, money, chosen, rates);
            }
        }
        return rates;
    }

    private void price(
            Model model, int at, @Nullable BigDecimal price, Money money, List<Hired> chosen, Map<UUID, Long> rates) {
        String field = "models[" + at + "].weekPrice";
        if (price == null) {
            wrong(field, "hire.form.rate-missing", model.model());
        } else if (!money.canPay(price)) {
            wrong(field, "hire.form.price-too-fine");
        } else {
            chosen.forEach(hired -> rates.put(hired.item().id(), money.toMinorUnits(price)));
        }
    }

    private void wrong(String field, String key, Object... args) {
        result.rejectValue(field, key, args, null);
    }
}
