package rollbook.offload;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.web.Choice;

/**
 * What the page that begins an offload offers.
 *
 * @param expectedBytes what the card holds of the roll, known or estimated; null if neither
 * @param estimate how long it should take as proposed, in words; empty if unknown
 * @param written codes of the media that hold copies of the roll
 */
record StartPage(
        Roll roll,
        @Nullable Long expectedBytes,
        String estimate,
        List<Choice> readers,
        List<Choice> adapters,
        List<LegChoices> legs,
        List<Choice> extras,
        List<String> written,
        StartForm proposal) {

    List<UUID> legIds() {
        return legs.stream().map(LegChoices::legId).toList();
    }

    record LegChoices(UUID legId, String label, String hint, List<Choice> choices) {}
}
