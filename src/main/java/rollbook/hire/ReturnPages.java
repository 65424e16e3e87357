package rollbook.hire;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.hire.HireHolds.OnItem;
import rollbook.label.CodeList;
import rollbook.production.Membership;
import rollbook.web.Display;

/** Gathers what the pages about the way back show. */
@Component
class ReturnPages {
    private final HireHolds holds;
    private final HireWords words;
    private final HirePages pages;
    private final Display display;

    ReturnPages(HireHolds holds, HireWords words, HirePages pages, Display display) {
        this.holds = holds;
        this.words = words;
        this.pages = pages;
        this.display = display;
    }

    /**
     * An item that can't go back yet.
     *
     * @param extendPath of its agreement's form; null if nobody wrote an agreement down
     */
    record HeldRow(Hired hired, OnItem onItem, @Nullable String extendPath) {}

    /** An item that may go back. */
    record FreeRow(Hired hired, String due, String cost, String onIt) {}

    /**
     * @param cards which cards can't go back yet; empty if none
     * @param held the media that can't
     * @param proven a sentence for each medium whose rolls are proven elsewhere
     * @param unproven a sentence for each roll that isn't
     */
    record ReturnPage(
            String sentence,
            String cards,
            List<HeldRow> held,
            List<FreeRow> free,
            List<String> proven,
            List<String> unproven) {
        public boolean anyMedia() {
            return !proven.isEmpty() || !unproven.isEmpty();
        }
    }

    ReturnPage page(Membership membership, List<Hired> shown) {
        Map<UUID, OnItem> onItems = holds.of(membership, shown);
        List<String> cards = shown.stream()
                .map(Hired::item)
                .filter(HiredItem::mayHoldRoll)
                .map(HiredItem::code)
                .toList();
        List<HeldRow> held = shown.stream()
                .filter(hired -> !hired.item().mayHoldRoll())
                .filter(hired -> onItems.get(hired.item().id()).keeps())
                .map(hired -> held(membership, hired, onItems.get(hired.item().id())))
                .toList();
        List<FreeRow> free = shown.stream()
                .filter(hired -> !onItems.get(hired.item().id()).keeps())
                .map(hired -> free(membership, hired, onItems.get(hired.item().id())))
                .toList();
        return new ReturnPage(
                display.text("hire.return.sentence", free.size(), held.size() + cards.size()),
                cards.isEmpty() ? "" : display.text("hire.holds.cards", CodeList.write(cards), cards.size()),
                held,
                free,
                free.stream()
                        .filter(row -> !row.onIt().isEmpty())
                        .map(row -> display.text(
                                "hire.return.item-says", row.hired().item().code(), row.onIt()))
                        .toList(),
                unproven(held, free));
    }

    /** Of what may go back too: more may be asked for before it is erased than that nothing is lost with it. */
    private List<String> unproven(List<HeldRow> held, List<FreeRow> free) {
        return Stream.concat(
                        held.stream()
                                .flatMap(row -> row.onItem().last().stream()
                                        .map(roll -> display.text(
                                                "hire.return.item-says",
                                                row.hired().item().code(),
                                                roll))),
                        free.stream()
                                .filter(row -> !row.onIt().isEmpty())
                                .map(row -> display.text(
                                        "hire.return.policy", row.hired().item().code())))
                .toList();
    }

    private static HeldRow held(Membership membership, Hired hired, OnItem onItem) {
        HireAgreement agreement = hired.agreement();
        return new HeldRow(
                hired, onItem, agreement == null ? null : membership.path("hire/" + agreement.id() + "/extend"));
    }

    private FreeRow free(Membership membership, Hired hired, OnItem onItem) {
        return new FreeRow(
                hired,
                words.due(hired.dueOn(), pages.today(membership)),
                words.ifReturnedOn(pages.today(membership), List.of(hired), HirePages.currency(membership)),
                onItem.text());
    }

    /** What was entered about how a hire ended. */
    record EndRow(HireEnd end, String cost) {}

    List<EndRow> history(Membership membership, List<HireEnd> ends) {
        return ends.stream()
                .map(end -> new EndRow(end, words.money(end.totalMinorUnits(), HirePages.currency(membership))))
                .toList();
    }
}
