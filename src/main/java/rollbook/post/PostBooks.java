package rollbook.post;

import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Component;
import rollbook.offload.Copies;
import rollbook.offload.Copy;
import rollbook.offload.Roll;
import rollbook.offload.Rolls;
import rollbook.shipment.SentItems;
import rollbook.verification.CopyStandings;

/** Looks up what there is to know of post, in eight statements however much was shot. */
@Component
class PostBooks {
    private final PostPlaces places;
    private final Stays stays;
    private final SentItems shipments;
    private final Rolls rolls;
    private final Copies copies;
    private final CopyStandings standings;
    private final Clock clock;

    PostBooks(
            PostPlaces places,
            Stays stays,
            SentItems shipments,
            Rolls rolls,
            Copies copies,
            CopyStandings standings,
            Clock clock) {
        this.places = places;
        this.stays = stays;
        this.shipments = shipments;
        this.rolls = rolls;
        this.copies = copies;
        this.standings = standings;
        this.clock = clock;
    }

    /** Nothing while nobody chose which place is post. */
    Optional<PostBook> of(UUID productionId) {
        return places.get(productionId).map(place -> of(productionId, place));
    }

    private PostBook of(UUID productionId, PostPlace place) {
        List<Roll> allRolls = rolls.list(productionId);
        List<Copy> allCopies = copies.list(productionId);
        return PostBook.of(
                place,
                new PostBook.Entries(
                        allRolls,
                        allCopies,
                        standings.of(productionId, allRolls, allCopies),
                        stays.at(productionId, place.placeId()),
                        shipments.ofPlace(productionId, place.placeId())),
                clock.instant());
    }
}
