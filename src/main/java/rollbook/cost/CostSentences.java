package rollbook.cost;

import org.springframework.stereotype.Service;
import rollbook.production.Membership;

/** What a production's media cost, in the sentence of the costs' page, for those who tell people of it. */
@Service
public class CostSentences {
    private final CostFacts facts;
    private final CostPages pages;

    CostSentences(CostFacts facts, CostPages pages) {
        this.facts = facts;
        this.pages = pages;
    }

    public String of(Membership viewer) {
        return pages.sentence(viewer, facts.of(viewer));
    }
}
