package rollbook.verification;

import java.util.List;
import rollbook.verification.SafetyLevel.Demand;

/**
 * Which integrity level of the NDSA Levels of Digital Preservation, version 2, is reached. What Rollbook does by itself
 * isn't asked for: checksums are kept apart from the content, and every check stands on record and can be looked at.
 */
final class IntegrityLevels {
    static final int HIGHEST = 4;

    private IntegrityLevels() {}

    /**
     * What is known of a roll, or of a production's habits.
     *
     * @param checksums whether checksums came with the content or were made from it
     * @param virusChecked whether content is checked for viruses: not known to Rollbook, somebody says so
     * @param checkedOnCopying whether every copy was compared when it was made
     * @param writeBlocked whether originals are read write-protected: not known to Rollbook, somebody says so
     * @param checkedAtIntervals whether re-checks are planned for every copy and none is overdue
     * @param checkedAfterEvents whether every copy was checked since its medium was moved, doubted or found
     * @param damageRepaired whether no copy is known to be bad
     */
    record Practice(
            boolean checksums,
            boolean virusChecked,
            boolean checkedOnCopying,
            boolean writeBlocked,
            boolean checkedAtIntervals,
            boolean checkedAfterEvents,
            boolean damageRepaired) {}

    static SafetyLevel of(Practice practice) {
        return SafetyLevel.of(
                HIGHEST,
                List.of(
                        Demand.of(1, practice.checksums(), "integrity.checksums"),
                        Demand.of(1, practice.virusChecked(), "integrity.virus-check"),
                        Demand.of(2, practice.checkedOnCopying(), "integrity.checked-on-copying"),
                        Demand.of(2, practice.writeBlocked(), "integrity.write-block"),
                        Demand.of(3, practice.checkedAtIntervals(), "integrity.intervals"),
                        Demand.of(4, practice.checkedAfterEvents(), "integrity.events"),
                        Demand.of(4, practice.damageRepaired(), "integrity.repair")));
    }
}
