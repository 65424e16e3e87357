package rollbook.demo;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Which rolls each camera shoots on which day, and onto which tape each is written. */
final class ShootingPlan {
    /** Rolls of the main unit's days 1 to 11, then of the second unit's days 1 to 6; the last of each is today. */
    private static final int[] A = {5, 4, 5, 6, 5, 5, 4, 6, 5, 5, 5};

    private static final int[] B = {4, 4, 3, 5, 4, 4, 4, 5, 3, 4, 4};
    private static final int[] C = {4, 3, 5, 4, 4, 2};

    private final StoryDates dates;
    private final long seed;
    private final SplittableRandom random;
    private final TapeShelf tapes = new TapeShelf();

    ShootingPlan(StoryDates dates, long seed) {
        this.dates = dates;
        this.seed = seed;
        this.random = new SplittableRandom(seed);
    }

    /** What a unit shoots on a day: the rolls of each of its cameras, in their order. */
    record UnitDay(boolean main, int number, int mainDay, List<List<ScriptedRoll>> cameras) {
        List<ScriptedRoll> rolls() {
            return cameras.stream().flatMap(List::stream).toList();
        }

        ScriptedRoll roll(String code) {
            return rolls().stream()
                    .filter(roll -> roll.code().equals(code))
                    .findFirst()
                    .orElseThrow();
        }
    }

    List<UnitDay> mainDays() {
        List<UnitDay> days = new ArrayList<>();
        for (int number = 1; number <= StoryDates.TODAY; number++) {
            List<ScriptedRoll> a = new ArrayList<>();
            List<ScriptedRoll> b = new ArrayList<>();
            for (int i = 0; i < A[number - 1]; i++) {
                a.add(i == 1 ? shoot('A', A, number, i, Shot.EFFECTS) : shoot('A', A, number, i, Shot.USUAL));
            }
            for (int i = 0; i < B[number - 1]; i++) {
                b.add(shoot('B', B, number, i, Shot.USUAL));
            }
            days.add(new UnitDay(true, number, number, List.of(a, b)));
        }
        return days;
    }

    List<UnitDay> secondUnitDays() {
        List<UnitDay> days = new ArrayList<>();
        for (int number = 1; number <= C.length; number++) {
            List<ScriptedRoll> c = new ArrayList<>();
            for (int i = 0; i < C[number - 1]; i++) {
                c.add(shoot('C', C, number, i, Shot.SECOND_UNIT));
            }
            days.add(new UnitDay(false, number, StoryDates.SECOND_UNIT_DAYS.get(number - 1), List.of(c)));
        }
        return days;
    }

    private ScriptedRoll shoot(char camera, int[] counts, int day, int index, Shot shot) {
        int number = index + 1;
        for (int earlier = 0; earlier < day - 1; earlier++) {
            number += counts[earlier];
        }
        int mainDay = camera == 'C' ? StoryDates.SECOND_UNIT_DAYS.get(day - 1) : day;
        LocalDate date = dates.dateOfMainDay(mainDay);
        int tenthsOfMinutes = switch (shot) {
            case USUAL -> random.nextInt(255, 385);
            case EFFECTS -> random.nextInt(120, 215);
            case SECOND_UNIT -> random.nextInt(310, 530);
        };
        return ScriptedRoll.shoot("%c%03d".formatted(camera, number), shot, tenthsOfMinutes, date, seed);
    }

    String shuttleOf(int mainDay) {
        return "SHUTTLE-%02d".formatted((mainDay - 1) % Stock.SHUTTLES + 1);
    }

    TapeShelf tapes() {
        return tapes;
    }

    /** Fills one tape after the other; a roll stays whole on its tape. */
    static final class TapeShelf {
        private static final long FULL = Stock.TAPE_BYTES / 100 * 95;

        private int number = 1;
        private long used;

        String next(ScriptedRoll roll) {
            if (used + roll.sizeBytes() > FULL) {
                number++;
                used = 0;
            }
            used += roll.sizeBytes();
            return "TAPE-%02d".formatted(number);
        }
    }
}
