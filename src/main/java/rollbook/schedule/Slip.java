package rollbook.schedule;

import java.nio.charset.StandardCharsets;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;

/**
 * What moves when a planned day slips: that day, and every later planned day of its unit by the same number of shooting
 * dates, so that breaks keep their length. Numbers and order stay. Days that are shooting, wrapped or cancelled stay, and
 * nobody is moved onto them.
 *
 * <pre>
 *   Mon to Fri, days on Wed 4, Thu 5, Fri 6, Mon 9.   Day of Wed 4 slips to Fri 6: two dates on.
 *   4 to 6, 5 to 9, 6 to 10, 9 to 11
 * </pre>
 */
record Slip(List<Move> moves) {

    record Move(ShootingDay day, LocalDate to) {
        public boolean moves() {
            return !day.date().equals(to);
        }
    }

    /** Moves the day so many shooting dates on. */
    static Slip by(
            int steps, ShootingDay slipped, List<ShootingDay> ofUnit, Set<DayOfWeek> weekdays, Set<LocalDate> leftOut) {
        WorkDates dates = dates(slipped, ofUnit, weekdays, leftOut);
        return of(dates.after(slipped.date(), steps), slipped, ofUnit, dates);
    }

    /**
     * Moves the day to a later date, which may be any weekday.
     *
     * @throws DayTaken if the date is not later, or a day that stays is on it
     */
    static Slip to(
            LocalDate date,
            ShootingDay slipped,
            List<ShootingDay> ofUnit,
            Set<DayOfWeek> weekdays,
            Set<LocalDate> leftOut) {
        if (!date.isAfter(slipped.date())) {
            throw new DayTaken("date", "schedule.invalid.slip-back", slipped.number());
        }
        for (ShootingDay day : ofUnit) {
            if (day.date().equals(date) && !moving(slipped, day)) {
                throw new DayTaken("date", "schedule.invalid.date-taken", day.number());
            }
        }
        return of(date, slipped, ofUnit, dates(slipped, ofUnit, weekdays, leftOut));
    }

    private static Slip of(LocalDate to, ShootingDay slipped, List<ShootingDay> ofUnit, WorkDates dates) {
        int steps = dates.between(slipped.date(), to);
        List<Move> moves = new ArrayList<>(List.of(new Move(slipped, to)));
        LocalDate last = to;
        for (ShootingDay day : ofUnit.stream()
                .filter(day -> moving(slipped, day))
                .sorted(Comparator.comparing(ShootingDay::date))
                .toList()) {
            if (day.id().equals(slipped.id())) {
                continue;
            }
            LocalDate moved = dates.after(day.date(), steps);
            // A day off the usual weekdays may be overtaken: it goes to the next date instead.
            last = moved.isAfter(last) ? moved : dates.after(last);
            moves.add(new Move(day, last));
        }
        return new Slip(moves);
    }

    private static WorkDates dates(
            ShootingDay slipped, List<ShootingDay> ofUnit, Set<DayOfWeek> weekdays, Set<LocalDate> leftOut) {
        Set<LocalDate> without = new HashSet<>(leftOut);
        ofUnit.stream()
                .filter(day -> !moving(slipped, day))
                .map(ShootingDay::date)
                .forEach(without::add);
        return new WorkDates(weekdays, without);
    }

    private static boolean moving(ShootingDay slipped, ShootingDay day) {
        return day.state() == DayState.PLANNED && !day.date().isBefore(slipped.date());
    }

    /** The days that get another date. */
    List<Move> changes() {
        return moves.stream().filter(Move::moves).toList();
    }

    /** Names exactly these moves of exactly these versions of the days: what was shown is what is done, or nothing. */
    String fingerprint() {
        StringBuilder text = new StringBuilder();
        moves.forEach(move -> text.append(move.day().id())
                .append('@')
                .append(move.day().version())
                .append('>')
                .append(move.to())
                .append(';'));
        return UUID.nameUUIDFromBytes(text.toString().getBytes(StandardCharsets.UTF_8))
                .toString();
    }
}
