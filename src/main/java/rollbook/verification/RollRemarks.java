package rollbook.verification;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import rollbook.format.NamedFormat;
import rollbook.offload.Roll;
import rollbook.offload.RollSizes;

/** How many clips the documents list of a day's rolls, and what a person should look at in them. */
@Service
public class RollRemarks {
    private final ClipSummaries clips;
    private final RollWarnings warnings;

    RollRemarks(ClipSummaries clips, RollWarnings warnings) {
        this.clips = clips;
        this.warnings = warnings;
    }

    /** @param clips null if no document speaks of the roll */
    public record Remarks(@Nullable Integer clips, List<Remark> remarks) {
        public static final Remarks NONE = new Remarks(null, List.of());
    }

    /**
     * @param kind the name of a {@link rollbook.manifest.RollWarning.Kind}
     * @param count how many cases there are
     * @param examples the first of them
     * @param doubtful whether something may be wrong; else it is told for completeness
     */
    public record Remark(String kind, String sentence, long count, List<String> examples, boolean doubtful) {}

    /**
     * In one statement.
     *
     * @param rolls the day's
     * @param formats of the production, by id
     * @return of every roll
     */
    public Map<UUID, Remarks> ofDay(UUID productionId, UUID dayId, List<Roll> rolls, Map<UUID, NamedFormat> formats) {
        Map<UUID, ClipSummaries.Told> told = clips.toldOfDay(productionId, dayId);
        Map<UUID, Remarks> remarks = new HashMap<>();
        for (Roll roll : rolls) {
            ClipSummaries.Told known = told.get(roll.id());
            List<Remark> ofRoll =
                    warnings
                            .of(roll, expectedBytes(roll, formats), known == null ? ClipSummaries.Told.NOTHING : known)
                            .stream()
                            .map(view -> new Remark(
                                    view.kind().name(), view.sentence(), view.count(), view.examples(), view.remark()))
                            .toList();
            remarks.put(
                    roll.id(), new Remarks(known == null ? null : known.clips().size(), ofRoll));
        }
        return remarks;
    }

    /** How many clips the documents about each roll of the production list, in one statement. */
    public Map<UUID, Integer> clips(UUID productionId) {
        return clips.counts(productionId);
    }

    private static @Nullable Long expectedBytes(Roll roll, Map<UUID, NamedFormat> formats) {
        NamedFormat format = formats.get(roll.formatId());
        return roll.minutes() == null || roll.sizeBytes() == null || format == null
                ? null
                : RollSizes.estimate(roll.minutes(), format.format()).bytes();
    }
}
