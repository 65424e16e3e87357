package rollbook.demo;

import java.time.Duration;
import java.util.UUID;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import rollbook.report.SignOffs;

/** Who signs the main unit's reports: the wrangler in the evening, post on the next day for all but the last one. */
@Component
@Profile("demo")
class Signatures {
    private static final Duration AFTER_CALL = Duration.ofHours(14);
    private static final Duration AFTER_NEXT_CALL = Duration.ofHours(5);
    private static final int FIRST_OF_WRANGLER = StoryDates.TODAY - 3;

    private final SignOffs signOffs;

    Signatures(SignOffs signOffs) {
        this.signOffs = signOffs;
    }

    void write(Timeline timeline, Show show, StoryDates dates) {
        for (int number = 1; number < StoryDates.TODAY; number++) {
            UUID day = show.mainDays().get(number - 1);
            if (number >= FIRST_OF_WRANGLER) {
                timeline.at(
                        dates.callOf(number).plus(AFTER_CALL), () -> signOffs.sign(show.as(Account.WRANGLER), day, ""));
            }
            if (number < StoryDates.TODAY - 1) {
                timeline.at(
                        dates.callOf(number + 1).plus(AFTER_NEXT_CALL),
                        () -> signOffs.sign(show.as(Account.POST), day, "Tapes read back."));
            }
        }
    }
}
