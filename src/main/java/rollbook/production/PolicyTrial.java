package rollbook.production;

import java.util.List;
import java.util.UUID;

/** Implemented by the module that knows what is proven: what a draft of a clearing policy would change, if it held now. */
public interface PolicyTrial {
    Outcome outcome(UUID productionId, ClearingPolicy draft);

    /**
     * @param held media that may be cleared or erased today and could not be any more
     * @param freed media that are held today and could be cleared
     */
    record Outcome(List<Change> held, List<Change> freed) {}

    /**
     * A medium that a draft makes a difference to.
     *
     * @param code of the medium
     * @param path of the page that tells more, below the production's
     * @param why what holds it, by the draft or until now
     */
    record Change(String code, String path, String why) {}
}
