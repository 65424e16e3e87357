package rollbook.scenario;

import rollbook.turnaround.Part;
import rollbook.web.Display;

/** What the things of a day that was played are called on pages. */
record DayNames(DayFacts facts, Display display) {

    /** A camera, card, reader, adapter or destination. */
    String of(String name) {
        for (DayFacts.CardType type : facts.cards()) {
            if (name.startsWith(type.key())) {
                String number = name.substring(type.key().length()).replaceAll("\\D", "");
                return display.text("scenario.card", kind(type), number);
            }
        }
        if (name.startsWith(DayPlans.EXTRA_READER)) {
            return display.text("scenario.extra-reader", name.substring(DayPlans.EXTRA_READER.length()));
        }
        return name.startsWith(Sheet.NEW + " ")
                ? display.text("scenario.new-adapter", name.substring(Sheet.NEW.length() + 1))
                : name;
    }

    /** Short enough for the name of a lane on a phone: the capacity, where that tells kinds of card apart. */
    private String kind(DayFacts.CardType type) {
        boolean bySize = facts.cards().stream()
                        .map(DayFacts.CardType::capacityBytes)
                        .distinct()
                        .count()
                == facts.cards().size();
        return bySize ? display.size(type.capacityBytes()) : type.model();
    }

    String model(String cardType) {
        return facts.cards().stream()
                .filter(type -> type.key().equals(cardType))
                .findFirst()
                .map(DayFacts.CardType::model)
                .orElse(cardType);
    }

    String of(Part part) {
        return display.text("scenario.part." + part.kind(), of(part.name()));
    }
}
