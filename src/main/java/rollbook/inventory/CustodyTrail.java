package rollbook.inventory;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Links of a chain of custody that belong together: with whom an item stayed where, from when to when. */
record CustodyTrail(List<Stay> stays) {

    /**
     * @param to null while it is there
     * @param enteredBy who entered that it came there
     * @param doubted whether it was in quarantine
     */
    record Stay(
            String placeName,
            String holder,
            Instant from,
            @Nullable Instant to,
            String enteredBy,
            boolean doubted) {

        boolean isWith(CustodyEntry entry) {
            return placeName.equals(entry.placeName())
                    && holder.equals(entry.holder())
                    && doubted == (entry.condition() == Condition.QUARANTINED);
        }

        private Stay until(Instant end) {
            return new Stay(placeName, holder, from, end, enteredBy, doubted);
        }
    }

    /** @param chain oldest first; what is lost, retired or given back is with nobody from then on */
    static CustodyTrail of(Collection<CustodyEntry> chain) {
        List<Stay> stays = new ArrayList<>();
        Stay now = null;
        for (CustodyEntry entry : chain) {
            boolean here = entry.condition() == Condition.GOOD || entry.condition() == Condition.QUARANTINED;
            if (now != null && here && now.isWith(entry)) {
                continue;
            }
            if (now != null) {
                stays.add(now.until(entry.at()));
            }
            now = here
                    ? new Stay(
                            entry.placeName(),
                            entry.holder(),
                            entry.at(),
                            null,
                            entry.personName(),
                            entry.condition() == Condition.QUARANTINED)
                    : null;
        }
        if (now != null) {
            stays.add(now);
        }
        return new CustodyTrail(stays);
    }
}
