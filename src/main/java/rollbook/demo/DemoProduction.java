package rollbook.demo;

import java.time.Duration;
import java.util.List;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.ApplicationArguments;
import org.springframework.boot.ApplicationRunner;
import org.springframework.context.annotation.Profile;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;
import rollbook.demo.ShootingPlan.UnitDay;
import rollbook.people.People;
import rollbook.people.SignInHints;
import rollbook.production.Productions;
import rollbook.web.Display;

/**
 * Fills an empty database with the demo production, and tells its accounts on the sign-in page. All of it is one
 * transaction: a start that is killed in the middle leaves nothing behind, and the next one begins anew. Runs before the
 * portal says that it is ready, so that no set-up code is printed.
 */
@Component
@Profile("demo")
class DemoProduction implements ApplicationRunner {
    private static final Logger log = LoggerFactory.getLogger(DemoProduction.class);
    private static final long SEED = 20_260_304L;

    private final JdbcClient jdbc;
    private final People people;
    private final Productions productions;
    private final Preparation preparation;
    private final Rentals rentals;
    private final Departments departments;
    private final AtPost atPost;
    private final Signatures signatures;
    private final DemoClock clock;
    private final SignInHints hints;
    private final Filling filling;
    private final Display display;
    private final TransactionTemplate transaction;

    DemoProduction(
            JdbcClient jdbc,
            People people,
            Productions productions,
            Preparation preparation,
            Rentals rentals,
            Departments departments,
            AtPost atPost,
            Signatures signatures,
            DemoClock clock,
            SignInHints hints,
            Filling filling,
            Display display,
            TransactionTemplate transaction) {
        this.jdbc = jdbc;
        this.people = people;
        this.productions = productions;
        this.preparation = preparation;
        this.rentals = rentals;
        this.departments = departments;
        this.atPost = atPost;
        this.signatures = signatures;
        this.clock = clock;
        this.hints = hints;
        this.filling = filling;
        this.display = display;
        this.transaction = transaction;
    }

    @Override
    public void run(ApplicationArguments arguments) {
        transaction.executeWithoutResult(status -> fillIfEmpty());
        filling.done();
        if (productions.all().stream().anyMatch(production -> production.code().equals(Show.CODE))) {
            for (Account account : Account.values()) {
                hints.add(account.signInName(), Account.PASSWORD, display.text(account.messageKey()));
            }
        } else {
            log.warn("This database is somebody’s own, so the demo leaves it alone");
        }
    }

    private void fillIfEmpty() {
        // Of two instances that start at once the second waits here, and finds the first one's demo.
        jdbc.sql("lock table people_person in share row exclusive mode").update();
        if (!people.isEmpty()) {
            return;
        }
        long began = System.nanoTime();
        try {
            play(StoryDates.endingAt(clock.instant(), Show.ZONE));
        } catch (RuntimeException e) {
            throw e;
        } catch (Exception e) {
            throw new IllegalStateException("The demo's story doesn't work out", e);
        } finally {
            clock.endStory();
        }
        log.info(
                "Filled the demo production {} in {} s",
                Show.CODE,
                Duration.ofNanos(System.nanoTime() - began).toSeconds());
    }

    private void play(StoryDates dates) throws Exception {
        Show show = preparation.prepare(dates);
        Crew crew = new Crew(departments, show);
        Timeline timeline = new Timeline();
        ShootingPlan plan = new ShootingPlan(dates, SEED);
        Story story = new Story(dates, plan, show, crew, timeline, SEED);
        List<UnitDay> main = plan.mainDays();
        List<UnitDay> second = plan.secondUnitDays();
        for (UnitDay day : main.subList(0, StoryDates.TODAY - 1)) {
            story.wrappedDay(day);
            second.stream().filter(other -> other.mainDay() == day.mainDay()).forEach(story::wrappedDay);
        }
        DayInProgress today = new DayInProgress(
                main.get(StoryDates.TODAY - 1),
                second.get(second.size() - 1),
                show,
                crew,
                timeline,
                dates.callOf(StoryDates.TODAY),
                plan);
        today.write();
        UnitDay yesterday = second.get(second.size() - 2);
        today.ask(yesterday.roll(Story.CONSISTENT));
        today.lookAhead(show.mainDays().get(StoryDates.TODAY));
        atPost.write(timeline, show, dates, plan, main);
        signatures.write(timeline, show, dates);
        story.forecasts();
        story.order();
        story.mail();
        rentals.play(show, timeline, dates);
        story.sendTheBentCard();
        timeline.at(dates.at(dates.enteredDates().get(StoryDates.SLIPPED - 1), 6, 30), () -> preparation.slip(show));
        timeline.at(dates.callOf(7).plusSeconds(7_200), () -> crew.quarantine("CARD-024", "A contact is bent."));
        timeline.playUntil(dates.now(), clock);
    }
}
