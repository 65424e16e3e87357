package rollbook.demo;

import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import rollbook.demo.Paperwork.Listed;
import rollbook.demo.ShootingPlan.UnitDay;
import rollbook.post.MediaSets;
import rollbook.post.PostPlaces;
import rollbook.production.Membership;
import rollbook.verification.ManifestIntake;

/** What the post house does: it reads a shuttle that has come, and makes a set of tapes. */
@Component
@Profile("demo")
class AtPost {
    /** The day whose shuttle is read again at post. */
    private static final int READ_DAY = 9;
    /** Up to whose end the first set of tapes is complete. */
    private static final int SET_DAY = 5;

    private final PostPlaces places;
    private final MediaSets sets;
    private final ManifestIntake intake;

    AtPost(PostPlaces places, MediaSets sets, ManifestIntake intake) {
        this.places = places;
        this.sets = sets;
        this.intake = intake;
    }

    /** Adds what happens at post to the story. */
    void write(Timeline timeline, Show show, StoryDates dates, ShootingPlan plan, List<UnitDay> mainDays) {
        timeline.at(
                dates.daysBefore(1),
                () -> places.choose(show.as(Account.OFFICE), show.places().get(Stock.POST), 0));
        Instant reading = dates.callOf(READ_DAY + 1).plus(Story.minutes(130));
        timeline.at(reading, () -> read(show, mainDays.get(READ_DAY - 1), plan.shuttleOf(READ_DAY), reading));
        timeline.at(dates.callOf(SET_DAY + 2).plus(Story.minutes(200)), () -> makeSet(show));
    }

    private void read(Show show, UnitDay day, String shuttle, Instant at) throws IOException {
        Membership post = show.as(Account.POST);
        Paperwork.Sheet sheet = Paperwork.mhlInPlace(
                Story.name(day) + "-" + shuttle + "-post", at, "post-station", Listed.sound(day.rolls()));
        UUID document = intake.storeForCopies(post, sheet.fileName(), sheet.open(), show.item(shuttle));
        intake.readNow(show.productionId(), document);
    }

    private void makeSet(Show show) {
        sets.record(
                show.as(Account.POST),
                new MediaSets.NewSet(
                        show.legs().get(Stock.TAPE),
                        show.mainDays().get(SET_DAY - 1),
                        "First box, shelf 2.",
                        "",
                        null));
    }
}
