package rollbook.post;

import java.util.List;
import java.util.UUID;
import org.springframework.stereotype.Component;
import rollbook.offload.Copies;
import rollbook.offload.Copy;
import rollbook.offload.Roll;
import rollbook.offload.Rolls;
import rollbook.verification.CopyStandings;
import rollbook.verification.CopyStandings.Standings;
import rollbook.web.NotFoundException;

/** Looks up what lies on the media of the legs that are kept. */
@Component
class LegShelf {
    private final Rolls rolls;
    private final Copies copies;
    private final CopyStandings standings;

    LegShelf(Rolls rolls, Copies copies, CopyStandings standings) {
        this.rolls = rolls;
        this.copies = copies;
        this.standings = standings;
    }

    /** Of every kept leg, in the order of the copy plan; in five statements. */
    List<LegContents> all(UUID productionId) {
        List<Roll> allRolls = rolls.list(productionId);
        List<Copy> allCopies = copies.list(productionId);
        Standings all = standings.of(productionId, allRolls, allCopies);
        return all.legs().stream()
                .filter(leg -> leg.returnsAfterDays() == null)
                .map(leg -> LegContents.of(leg, allRolls, allCopies, all))
                .toList();
    }

    /** @throws NotFoundException if this production has no such leg, or it isn't kept */
    LegContents of(UUID productionId, UUID legId) {
        return all(productionId).stream()
                .filter(contents -> contents.leg().id().equals(legId))
                .findFirst()
                .orElseThrow(NotFoundException::new);
    }
}
