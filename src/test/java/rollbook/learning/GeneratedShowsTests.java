package rollbook.learning;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import rollbook.learning.GeneratedShow.Day;
import rollbook.learning.GeneratedShow.Regime;

/** The shows that forecasts are tried on, and how the forecast of bytes to the end does on them. */
class GeneratedShowsTests {
    private static final int SHOWS = 400;
    private static final long FIRST_SEED = 1;
    private static final int REPLICATES = 500;

    /** In 400 shows the share of a right 80 % band lies from 76 to 84 % in 96 of 100 cases (exact binomial). */
    @Test
    void theBandOfBytesToTheEndHoldsFromTheFirstDay() {
        assertThat(coverage(1).share()).isBetween(0.76, 0.84);
    }

    @Test
    void theBandOfBytesToTheEndHoldsFromTheFifthDayOn() {
        assertThat(coverage(5).share()).isBetween(0.76, 0.84);
        assertThat(coverage(5, 10, 15, 20, 25, 30).share()).isBetween(0.76, 0.84);
    }

    /** On the evenings of these shooting days, in all shows that go on after them. */
    private static Coverage coverage(int... shootingDays) {
        int inside = 0;
        int all = 0;
        for (GeneratedShow show : GeneratedShows.shows(SHOWS, FIRST_SEED)) {
            for (int day : shootingDays) {
                if (show.shootingDays() > day) {
                    LocalDate evening = show.eveningOfShootingDay(day);
                    all++;
                    inside += BytesToTheEnd.of(show, evening, Habits.USUAL, REPLICATES)
                                    .liesIn80PercentBand()
                            ? 1
                            : 0;
                }
            }
        }
        return new Coverage(inside, all);
    }

    @Test
    void theSameSeedMakesTheSameShow() {
        assertThat(GeneratedShows.show(Regime.TWO_UNITS, 4)).isEqualTo(GeneratedShows.show(Regime.TWO_UNITS, 4));
        assertThat(GeneratedShows.show(Regime.TWO_UNITS, 4)).isNotEqualTo(GeneratedShows.show(Regime.TWO_UNITS, 8));
    }

    @Test
    void regimesAreWhatTheirNamesSay() {
        assertThat(ratio(Regime.STEADY, day -> true)).isBetween(0.95, 1.1);
        assertThat(ratio(Regime.HEAVIER, day -> true)).isBetween(1.2, 1.45);
        assertThat(ratio(Regime.SLOWING, day -> day.number() <= 5))
                .isGreaterThan(1.15 * ratio(Regime.SLOWING, day -> day.number() > 15));
    }

    @Test
    void aSecondUnitIsPlannedFromTheStartAndStartsLate() {
        for (long seed = 1; seed <= 50; seed++) {
            GeneratedShow show = GeneratedShows.show(Regime.TWO_UNITS, seed);
            List<Day> second = show.days().stream()
                    .filter(day -> day.unit().equals("second"))
                    .toList();
            assertThat(second).as("seed %d", seed).isNotEmpty();
            assertThat(second.get(0).date()).isAfter(show.firstDate().plusDays(3));
            assertThat(second.get(0).announcedOn()).isBefore(show.firstDate());
        }
    }

    @Test
    void someDaysAreCancelledAndSomeOfThemMovedToTheEnd() {
        List<GeneratedShow> shows = GeneratedShows.shows(100, FIRST_SEED);
        long days = shows.stream().mapToLong(show -> show.days().size()).sum();
        long cancelled = count(shows, Day::cancelled);
        long moved = shows.stream()
                .mapToLong(show -> show.days().stream()
                        .filter(day -> !day.announcedOn().isBefore(show.firstDate()))
                        .count())
                .sum();
        long empty = count(shows, day -> !day.cancelled() && day.actualBytes() == 0);

        assertThat((double) cancelled / days).isBetween(0.03, 0.05);
        assertThat((double) moved / cancelled).isBetween(0.55, 0.8);
        assertThat((double) empty / days).isBetween(0.005, 0.02);
    }

    @Test
    void nothingIsKnownBeforeItHappens() {
        for (GeneratedShow show : GeneratedShows.shows(40, FIRST_SEED)) {
            LocalDate evening = show.eveningOfShootingDay(5);
            assertThat(show.wrappedBy(evening))
                    .allMatch(day -> !day.date().isAfter(evening))
                    .hasSizeGreaterThanOrEqualTo(5);
            assertThat(show.plannedAfter(evening))
                    .allMatch(day ->
                            day.date().isAfter(evening) && !day.announcedOn().isAfter(evening));
            assertThat(show.bytesAfter(show.lastDate())).isZero();
        }
    }

    private static long count(List<GeneratedShow> shows, Predicate<Day> which) {
        return shows.stream()
                .mapToLong(show -> show.days().stream().filter(which).count())
                .sum();
    }

    private static double ratio(Regime regime, Predicate<Day> which) {
        double planned = 0;
        double actual = 0;
        for (long seed = 1; seed <= 200; seed++) {
            for (Day day : GeneratedShows.show(regime, seed).days()) {
                if (!day.cancelled() && which.test(day)) {
                    planned += day.plannedBytes();
                    actual += day.actualBytes();
                }
            }
        }
        return actual / planned;
    }
}
