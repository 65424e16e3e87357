package rollbook.schedule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class SlipTests {
    private static final long SEED = 20261125;
    private static final UUID UNIT = UUID.randomUUID();
    private static final Set<DayOfWeek> WORKING_WEEK = EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.FRIDAY);
    /** A Monday; checked in a test below against the calendar of the JDK. */
    private static final LocalDate MONDAY = LocalDate.of(2031, 3, 3);

    @Test
    void theExampleDatesAreWhatTheirNamesSay() {
        assertThat(MONDAY.getDayOfWeek()).isEqualTo(DayOfWeek.MONDAY);
    }

    @Test
    void aDayThatSlipsByTwoTakesTheRestAlongOverTheWeekend() {
        List<ShootingDay> days = List.of(day(1, 2), day(2, 3), day(3, 4), day(4, 7));
        Slip slip = Slip.by(2, days.get(0), days, WORKING_WEEK, Set.of());
        // By hand: Wed to Fri, Thu to Mon, Fri to Tue, Mon to Wed.
        assertThat(offsets(slip)).containsExactly(4L, 7L, 8L, 9L);
    }

    @Test
    void toADateIsTheSameAsByTheShootingDaysBetween() {
        List<ShootingDay> days = List.of(day(1, 2), day(2, 3), day(3, 4), day(4, 7));
        assertThat(Slip.to(MONDAY.plusDays(4), days.get(0), days, WORKING_WEEK, Set.of()))
                .isEqualTo(Slip.by(2, days.get(0), days, WORKING_WEEK, Set.of()));
    }

    @Test
    void aSaturdayMadeUpForMovesNothingElse() {
        List<ShootingDay> days = List.of(day(1, 4), day(2, 7));
        Slip slip = Slip.to(MONDAY.plusDays(5), days.get(0), days, WORKING_WEEK, Set.of());
        assertThat(slip.changes()).extracting(move -> move.day().number()).containsExactly(1);
    }

    @Test
    void aBreakKeepsItsLength() {
        List<ShootingDay> days = List.of(day(1, 0), day(2, 1), day(3, 14));
        Slip slip = Slip.by(1, days.get(0), days, WORKING_WEEK, Set.of());
        assertThat(offsets(slip)).containsExactly(1L, 2L, 15L);
    }

    @Test
    void nobodyIsMovedOntoADayThatStaysOrAHolidayThatIsLeftOut() {
        ShootingDay cancelled = day(2, 1, DayState.CANCELLED);
        List<ShootingDay> days = List.of(day(1, 0), cancelled, day(3, 2));
        Slip slip = Slip.by(1, days.get(0), days, WORKING_WEEK, Set.of(MONDAY.plusDays(3)));
        // By hand: Tue is taken, so Mon to Wed; Thu is a holiday, so Wed to Fri.
        assertThat(offsets(slip)).containsExactly(2L, 4L);
        assertThatThrownBy(() -> Slip.to(cancelled.date(), days.get(0), days, WORKING_WEEK, Set.of()))
                .isInstanceOfSatisfying(
                        DayTaken.class,
                        taken -> assertThat(taken.messageKey()).isEqualTo("schedule.invalid.date-taken"));
    }

    @Test
    void aSlipGoesForwardOnly() {
        List<ShootingDay> days = List.of(day(1, 1));
        for (int offset : new int[] {0, 1}) {
            assertThatThrownBy(() -> Slip.to(MONDAY.plusDays(offset), days.get(0), days, WORKING_WEEK, Set.of()))
                    .isInstanceOf(DayTaken.class);
        }
    }

    @Test
    void orderNumbersAndWeekdaysAreKeptAndNothingBeforeMoves() {
        for (int round = 0; round < 2_000; round++) {
            long seed = SEED + round;
            var random = new SplittableRandom(seed);
            Set<DayOfWeek> weekdays = weekdays(random);
            List<ShootingDay> days = days(random, weekdays);
            List<ShootingDay> planned =
                    days.stream().filter(day -> day.state() == DayState.PLANNED).toList();
            if (planned.isEmpty()) {
                continue;
            }
            ShootingDay slipped = planned.get(random.nextInt(planned.size()));
            Set<LocalDate> leftOut = new HashSet<>();
            for (int i = random.nextInt(4); i > 0; i--) {
                leftOut.add(MONDAY.plusDays(random.nextInt(60)));
            }
            int steps = 1 + random.nextInt(10);
            check(seed, Slip.by(steps, slipped, days, weekdays, leftOut), slipped, days, weekdays, leftOut);
        }
    }

    private static void check(
            long seed,
            Slip slip,
            ShootingDay slipped,
            List<ShootingDay> days,
            Set<DayOfWeek> weekdays,
            Set<LocalDate> leftOut) {
        Map<UUID, LocalDate> after = new HashMap<>();
        days.forEach(day -> after.put(day.id(), day.date()));
        slip.moves().forEach(move -> after.put(move.day().id(), move.to()));
        List<ShootingDay> moved = days.stream()
                .filter(day -> day.state() == DayState.PLANNED && !day.date().isBefore(slipped.date()))
                .toList();
        assertThat(slip.moves())
                .as("seed %d: exactly these move", seed)
                .extracting(Slip.Move::day)
                .containsExactlyElementsOf(moved);
        assertThat(after.values()).as("seed %d: one day a date", seed).doesNotHaveDuplicates();
        assertThat(moved.stream().map(day -> after.get(day.id())).toList())
                .as("seed %d: order", seed)
                .isSortedAccordingTo(Comparator.naturalOrder())
                .allSatisfy(date -> {
                    assertThat(weekdays).as("seed %d: weekday", seed).contains(date.getDayOfWeek());
                    assertThat(leftOut).as("seed %d: left out", seed).doesNotContain(date);
                });
        assertThat(moved)
                .as("seed %d: later", seed)
                .allSatisfy(day -> assertThat(after.get(day.id())).isAfter(day.date()));
        assertThat(days.stream().filter(day -> !moved.contains(day)).toList())
                .as("seed %d: the others stay", seed)
                .allSatisfy(day -> assertThat(after.get(day.id())).isEqualTo(day.date()));
    }

    private static Set<DayOfWeek> weekdays(SplittableRandom random) {
        Set<DayOfWeek> weekdays = EnumSet.of(DayOfWeek.of(1 + random.nextInt(7)));
        for (DayOfWeek day : DayOfWeek.values()) {
            if (random.nextInt(3) > 0) {
                weekdays.add(day);
            }
        }
        return weekdays;
    }

    /** Days on those weekdays with gaps, some of them wrapped or cancelled. */
    private static List<ShootingDay> days(SplittableRandom random, Set<DayOfWeek> weekdays) {
        TreeSet<LocalDate> dates = new TreeSet<>();
        for (int i = 0; i < 60; i++) {
            LocalDate date = MONDAY.plusDays(i);
            if (weekdays.contains(date.getDayOfWeek()) && random.nextInt(4) > 0) {
                dates.add(date);
            }
        }
        List<ShootingDay> days = new ArrayList<>();
        for (LocalDate date : dates) {
            DayState state = random.nextInt(6) > 0 ? DayState.PLANNED : DayState.values()[random.nextInt(4)];
            days.add(new ShootingDay(UUID.randomUUID(), UNIT, "Main unit", days.size() + 1, date, state, "", 0));
        }
        return days;
    }

    private static List<Long> offsets(Slip slip) {
        return slip.moves().stream()
                .map(move -> move.to().toEpochDay() - MONDAY.toEpochDay())
                .collect(Collectors.toList());
    }

    private static ShootingDay day(int number, int offset) {
        return day(number, offset, DayState.PLANNED);
    }

    private static ShootingDay day(int number, int offset, DayState state) {
        return new ShootingDay(UUID.randomUUID(), UNIT, "Main unit", number, MONDAY.plusDays(offset), state, "", 0);
    }
}
