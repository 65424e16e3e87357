package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import rollbook.production.MediaKind;
import rollbook.verification.RecheckSchedule.CheckedCopy;
import rollbook.verification.RecheckSchedule.Due;
import rollbook.verification.RecheckSchedule.State;

/** No standard prescribes an interval between checks, so the dates here follow from the definition alone. */
class RecheckScheduleTests {
    private static final LocalDate TODAY = LocalDate.of(2031, 3, 20);
    private static final RecheckPlan PLAN = new RecheckPlan(14, null, 365, 1);
    private static final UUID SHUTTLE = UUID.randomUUID();
    private static final UUID TAPE = UUID.randomUUID();

    @Test
    void aMediumIsDueWhenItsOldestCheckIs() {
        List<Due> schedule = of(drive("A001", TODAY.minusDays(3)), drive("A002", TODAY.minusDays(20)));
        assertThat(schedule).hasSize(1);
        Due due = schedule.get(0);
        assertThat(due.dueOn()).isEqualTo(TODAY.minusDays(6));
        assertThat(due.days()).isEqualTo(-6);
        assertThat(due.state()).isEqualTo(State.OVERDUE);
        assertThat(due.rollCodes()).containsExactly("A002");
    }

    @Test
    void aCheckIsDueFromAWeekBeforeAndOverdueTheDayAfter() {
        assertThat(stateWhenDueOn(TODAY.plusDays(8))).isEqualTo(State.LATER);
        assertThat(stateWhenDueOn(TODAY.plusDays(7))).isEqualTo(State.DUE);
        assertThat(stateWhenDueOn(TODAY)).isEqualTo(State.DUE);
        assertThat(stateWhenDueOn(TODAY.minusDays(1))).isEqualTo(State.OVERDUE);
    }

    @Test
    void kindsWithoutAPlanAreLeftAlone() {
        CheckedCopy onArray =
                new CheckedCopy(UUID.randomUUID(), "ARRAY-01", MediaKind.ARRAY, "Set", "A001", TODAY.minusYears(3));
        assertThat(of(onArray)).isEmpty();
    }

    @Test
    void theMostPressingComesFirst() {
        CheckedCopy onTape =
                new CheckedCopy(TAPE, "TAPE-01", MediaKind.TAPE, "Vault", "A001", TODAY.minusDays(365 + 30));
        assertThat(of(drive("A001", TODAY.minusDays(20)), onTape))
                .extracting(Due::itemCode)
                .containsExactly("TAPE-01", "SHUTTLE-01");
    }

    @Test
    void theOrderOfCopiesChangesNothingAndALaterCheckNeverMakesAMediumDueSooner() {
        long seed = new Random().nextLong();
        Random random = new Random(seed);
        for (int round = 0; round < 200; round++) {
            List<CheckedCopy> copies = new ArrayList<>();
            for (int i = 0; i < 1 + random.nextInt(8); i++) {
                copies.add(drive("A%03d".formatted(i), TODAY.minusDays(random.nextInt(40))));
            }
            List<Due> before = RecheckSchedule.of(copies, PLAN, TODAY);
            Collections.shuffle(copies, random);
            assertThat(RecheckSchedule.of(copies, PLAN, TODAY))
                    .as("seed %d", seed)
                    .isEqualTo(before);
            CheckedCopy checkedAgain = copies.remove(0);
            copies.add(drive(checkedAgain.rollCode(), TODAY));
            assertThat(RecheckSchedule.of(copies, PLAN, TODAY).get(0).dueOn())
                    .as("seed %d", seed)
                    .isAfterOrEqualTo(before.get(0).dueOn());
        }
    }

    private static State stateWhenDueOn(LocalDate dueOn) {
        return of(drive("A001", dueOn.minusDays(14))).get(0).state();
    }

    private static CheckedCopy drive(String roll, LocalDate checkedOn) {
        return new CheckedCopy(SHUTTLE, "SHUTTLE-01", MediaKind.DRIVE, "Set", roll, checkedOn);
    }

    private static List<Due> of(CheckedCopy... copies) {
        return RecheckSchedule.of(List.of(copies), PLAN, TODAY);
    }
}
