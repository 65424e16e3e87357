package rollbook.demo;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import rollbook.demo.Paperwork.Listed;
import rollbook.demo.Paperwork.Sheet;
import rollbook.demo.ShootingPlan.UnitDay;

/**
 * The eleventh day, seven hours in: one card in each state between blank and blank again. Minutes are counted from the
 * call.
 */
final class DayInProgress {
    private final UnitDay main;
    private final UnitDay second;
    private final Show show;
    private final Crew crew;
    private final Timeline timeline;
    private final Instant call;
    private final String shuttle;
    private final ShootingPlan plan;

    DayInProgress(
            UnitDay main, UnitDay second, Show show, Crew crew, Timeline timeline, Instant call, ShootingPlan plan) {
        this.main = main;
        this.second = second;
        this.show = show;
        this.crew = crew;
        this.timeline = timeline;
        this.call = call;
        this.plan = plan;
        this.shuttle = plan.shuttleOf(main.mainDay());
    }

    void write() {
        UUID mainDay = show.mainDays().get(main.number() - 1);
        UUID secondDay = show.secondDays().get(second.number() - 1);
        timeline.at(call, () -> crew.startDay(mainDay));
        timeline.at(after(5), () -> crew.startDay(secondDay));
        rolls(mainDay, secondDay);
        lunchDocuments();
        afternoonDocuments();
    }

    /** While a card is copied there is time to look ahead: two ways to shoot tomorrow, and what one of them needs. */
    void lookAhead(UUID tomorrow) {
        timeline.at(after(395), () -> crew.playThrough("Tomorrow as planned", tomorrow, Map.of("wrap", "18:30")));
        timeline.at(
                after(401),
                () -> crew.proposeOrder(crew.playThrough(
                        "Tomorrow with a faster shuttle",
                        tomorrow,
                        Map.of("wrap", "18:30", "write-rate." + Stock.SHUTTLE, "900", "budget", "1500"))));
    }

    /** Somebody needs yesterday's card before the array can be read again; the second person hasn't answered yet. */
    void ask(ScriptedRoll held) {
        timeline.at(
                after(392),
                () -> crew.askToClearWithoutProof(
                        held,
                        "The second unit is out of cards, and the array can’t be read again before tonight. "
                                + "Shuttle and tape are proven."));
    }

    private void rolls(UUID mainDay, UUID secondDay) {
        shoot(main.roll("A051"), mainDay, 18, 82);
        offload(main.roll("A051"), 92, 124);
        shoot(main.roll("B041"), mainDay, 24, 112);
        offload(main.roll("B041"), 128, 161);
        shoot(second.roll("C021"), secondDay, 30, 150);
        timeline.at(
                after(158), () -> crew.startOffload(second.roll("C021"), "READER-3", "ADAPTER-1", shuttle, "ARRAY-1"));
        timeline.at(after(169), () -> crew.finishOffload(second.roll("C021")));
        shoot(main.roll("A052"), mainDay, 86, 170);
        offload(main.roll("A052"), 180, 213);
        shoot(main.roll("B042"), mainDay, 116, 220);
        offload(main.roll("B042"), 228, 283);
        shoot(main.roll("A053"), mainDay, 174, 260);
        offload(main.roll("A053"), 288, 318);
        shoot(main.roll("B043"), mainDay, 224, 380);
        timeline.at(after(409), () -> crew.startOffload(main.roll("B043"), "READER-1", null, shuttle, "ARRAY-1"));
        shoot(main.roll("A054"), mainDay, 264, 404);
        timeline.at(after(385), () -> crew.load(main.roll("B044"), mainDay));
        timeline.at(after(407), () -> crew.load(main.roll("A055"), mainDay));
        timeline.at(after(155), () -> crew.load(second.roll("C022"), secondDay));
    }

    /** The morning's rolls went on tape at lunch already; one card is back in use, one may go, one waits for its word. */
    private void lunchDocuments() {
        List<ScriptedRoll> morning = List.of(main.roll("A051"), main.roll("B041"), second.roll("C021"));
        List<Listed> sound = Listed.sound(morning);
        timeline.at(after(240), () -> crew.sendForCards(Paperwork.bsd("day-11-morning-cards", sound)));
        timeline.at(
                after(248),
                () -> crew.sendForCopies(
                        Paperwork.mhlInPlace("day-11-morning-" + shuttle, after(246), "set-station", sound), shuttle));
        timeline.at(after(257), () -> crew.sendForCopies(Paperwork.gnuMd5("day-11-morning-ARRAY-1", sound), "ARRAY-1"));
        for (ScriptedRoll roll : morning) {
            String tape = plan.tapes().next(roll);
            timeline.at(
                    after(366),
                    () -> crew.sendForCopies(
                            Paperwork.gnuMd5("day-11-morning-" + roll.code() + "-" + tape, Listed.sound(List.of(roll))),
                            tape));
        }
        timeline.at(after(378), () -> crew.clear(main.roll("B041")));
        timeline.at(after(381), () -> crew.clear(second.roll("C021")));
        timeline.at(after(384), () -> crew.erase(second.roll("C021")));
    }

    /** One list broke off while it was written, of another nobody said which medium it describes. */
    private void afternoonDocuments() {
        List<Listed> later = Listed.sound(List.of(main.roll("A052"), main.roll("B042")));
        timeline.at(after(330), () -> crew.sendForCards(Paperwork.bsd("day-11-noon-cards", later)));
        timeline.at(after(338), () -> crew.send(Paperwork.brokenOff("day-11-noon-ARRAY-1", later)));
        Sheet unsaid = Paperwork.mhlInPlace("day-11-noon", after(339), shuttle.toLowerCase(Locale.ROOT), later);
        timeline.at(after(341), () -> crew.send(unsaid));
    }

    private void shoot(ScriptedRoll roll, UUID dayId, int load, int pull) {
        timeline.at(after(load), () -> crew.load(roll, dayId));
        timeline.at(after(pull), () -> crew.pull(roll));
    }

    private void offload(ScriptedRoll roll, int start, int end) {
        timeline.at(after(start), () -> crew.startOffload(roll, "READER-2", null, shuttle, "ARRAY-1"));
        timeline.at(after(end), () -> crew.finishOffload(roll));
    }

    private Instant after(int minutes) {
        return call.plus(Story.minutes(minutes));
    }
}
