package rollbook.inventory;

import java.util.List;
import java.util.Map;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import rollbook.production.CopyPlan;
import rollbook.production.Leg;
import rollbook.production.MediaKind;
import rollbook.production.Membership;
import rollbook.production.Place;
import rollbook.production.Places;
import rollbook.quantity.Money;
import rollbook.web.Choice;
import rollbook.web.Display;
import rollbook.web.Refusal;

/** What the pages with an item's form have in common: its choices, and how wrong answers are told. */
@Component
class ItemFormPage {
    private final Places places;
    private final CopyPlan plan;
    private final Display display;

    ItemFormPage(Places places, CopyPlan plan, Display display) {
        this.places = places;
        this.plan = plan;
        this.display = display;
    }

    /** The words and names of a production that an item's description may use. */
    record Words(List<Place> places, List<Leg> legs, Money money) {
        ItemReading reading() {
            return new ItemReading(places, legs, money);
        }

        String firstPlace() {
            return places.isEmpty() ? "" : places.get(0).name();
        }
    }

    Words words(Membership membership) {
        return new Words(
                places.list(membership.productionId()),
                plan.legs(membership.productionId()),
                Money.of(membership.currency()));
    }

    void addChoices(Model model, Words words) {
        model.addAttribute("kinds", MediaKind.values());
        model.addAttribute("owners", Ownership.values());
        model.addAttribute("currency", words.money().currency().getCurrencyCode());
        model.addAttribute(
                "places",
                words.places().stream()
                        .map(place -> new Choice(place.name(), place.name()))
                        .toList());
        model.addAttribute(
                "legs",
                words.legs().stream()
                        .map(leg -> new Choice(leg.name(), leg.name()))
                        .toList());
    }

    /** Reads the item; what is wrong with it goes to the fields, except to those in {@code elsewhere}, which names their own. */
    ItemReading.Read read(Map<Column, String> cells, Words words, BindingResult result, Map<Column, String> elsewhere) {
        ItemReading.Read read = words.reading().read(cells);
        read.problems().forEach(problem -> reject(result, problem, elsewhere));
        return read;
    }

    private void reject(BindingResult result, Problem problem, Map<Column, String> elsewhere) {
        Column column = problem.column() == null ? Column.CODE : problem.column();
        reject(result, elsewhere.getOrDefault(column, column.field()), problem.key(), problem.args());
    }

    void reject(BindingResult result, String field, String key, List<Object> args) {
        Object[] values = args.toArray();
        String text = display.text(key, values) + " " + display.text(key + ".next", values);
        // The code names no message, so that the text stands, which says what to do as well.
        result.rejectValue(field, "wrong", values, text);
    }

    /** A rule that the service found broken, said beside the field that it is about. */
    void reject(BindingResult result, String field, Refusal refusal) {
        String next = display.next(refusal);
        String about = refusal.key().equals("inventory.refused.serials-exist") ? "serial" : field;
        result.rejectValue(about, "refused", new Object[0], display.text(refusal) + (next == null ? "" : " " + next));
    }

    /** What is said about an act, on one item or on several. */
    void check(CustodyAct act, CustodyForm form, BindingResult result) {
        if (act.moves() && form.placeId() == null) {
            reject(result, "placeId", "inventory.problem.missing", List.of());
        }
        if (act.needsReason() && form.reasonText().isEmpty()) {
            reject(result, "reason", "inventory.problem.missing", List.of());
        }
        if (!CustodyForm.keepable(form.reasonText())) {
            reject(result, "reason", "inventory.problem.unkeepable", List.of(CustodyForm.MOST));
        }
        if (!CustodyForm.keepable(form.holderText())) {
            reject(result, "holder", "inventory.problem.unkeepable", List.of(CustodyForm.MOST));
        }
    }

    List<Choice> places(Membership membership) {
        return places.list(membership.productionId()).stream()
                .map(place -> new Choice(place.id().toString(), place.name()))
                .toList();
    }
}
