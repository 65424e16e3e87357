package rollbook.scenario;

import org.jspecify.annotations.Nullable;

/** What has to be there before a day can be played. */
enum Missing {
    DAY,
    CAMERAS,
    CARDS,
    READERS,
    DESTINATIONS,
    NOTHING;

    static Missing of(@Nullable DayFacts facts) {
        if (facts == null) {
            return DAY;
        }
        if (facts.cameras().isEmpty()) {
            return CAMERAS;
        }
        if (facts.cards().isEmpty()) {
            return CARDS;
        }
        if (facts.readers().isEmpty()) {
            return READERS;
        }
        return facts.destinations().isEmpty() ? DESTINATIONS : NOTHING;
    }
}
