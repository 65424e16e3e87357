package rollbook.turnaround;

/** Plays a day, event by event. The same plan and draws give the same day. */
public final class Simulation {
    private Simulation() {}

    /** With the bars of the timeline. */
    public static DayResult run(DayPlan plan, Draws draws) {
        return new Playing(plan, draws, true).play();
    }

    /** The same without the bars, faster. */
    public static DayResult summary(DayPlan plan, Draws draws) {
        return new Playing(plan, draws, false).play();
    }
}
