package rollbook.offload;

import java.util.List;
import rollbook.production.Camera;
import rollbook.web.Choice;

/** What the page of a loading offers for one camera. */
record LoadPage(
        List<Camera> cameras,
        Camera camera,
        String nextCode,
        List<String> blankCards,
        List<Choice> days,
        List<Choice> formats,
        LoadForm proposal) {

    /** Whether all that a roll needs is there to choose from. */
    public boolean complete() {
        return !blankCards.isEmpty() && !days.isEmpty() && !formats.isEmpty();
    }
}
