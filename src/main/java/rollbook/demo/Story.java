package rollbook.demo;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.demo.Paperwork.Flaw;
import rollbook.demo.Paperwork.Listed;
import rollbook.demo.ShootingPlan.UnitDay;
import rollbook.supplier.DeliveredTo;

/** The first ten shooting days: what goes well on every one, and the few things that don't. */
final class Story {
    /** Yesterday's three copies that each hold a card. */
    static final String FAILED = "A049";

    static final String INCOMPLETE = "B039";
    static final String CONSISTENT = "C019";
    /** Failed on day 4 and made again the same evening. */
    private static final String MADE_AGAIN = "A017";
    /** Whose offload broke off on day 6. */
    private static final String BROKE_OFF = "B022";

    private static final Duration DAY_LENGTH = Duration.ofMinutes(630);
    private static final Duration SHUTTLE_TRAVELS = Duration.ofMinutes(75);
    private static final Duration SHUTTLE_COMES_WITHIN = Duration.ofHours(3);
    private static final int MINUTES_IN_FRONT_OF_CAMERA = 560;

    private final StoryDates dates;
    private final ShootingPlan plan;
    private final Show show;
    private final Crew crew;
    private final Timeline timeline;
    private final SplittableRandom random;

    Story(StoryDates dates, ShootingPlan plan, Show show, Crew crew, Timeline timeline, long seed) {
        this.dates = dates;
        this.plan = plan;
        this.show = show;
        this.crew = crew;
        this.timeline = timeline;
        this.random = new SplittableRandom(seed + 1);
    }

    private record Pulled(ScriptedRoll roll, Instant at) {}

    /** A day that was shot to its end, its copies, and the clearing of its cards on the next morning. */
    void wrappedDay(UnitDay day) {
        Instant call = dates.callOf(day.mainDay());
        UUID dayId = (day.main() ? show.mainDays() : show.secondDays()).get(day.number() - 1);
        Instant wrap = call.plus(DAY_LENGTH);
        timeline.at(call, () -> crew.startDay(dayId));
        timeline.at(wrap, () -> crew.wrapDay(dayId));
        List<Pulled> pulled = shoot(day, call, dayId);
        Instant copied = offload(day, pulled, call);
        Instant evening = copied.isAfter(wrap) ? copied : wrap;
        sendLists(day, evening.plus(minutes(20)));
        if (day.main()) {
            shipShuttle(day, evening.plus(minutes(75)));
        }
        Instant morning = dates.callOf(day.mainDay() + 1);
        sendTapeLists(day, morning.plus(minutes(15)));
        clear(day, morning.plus(minutes(40)));
    }

    private List<Pulled> shoot(UnitDay day, Instant call, UUID dayId) {
        List<Pulled> pulled = new ArrayList<>();
        int later = 0;
        for (List<ScriptedRoll> camera : day.cameras()) {
            int slot = MINUTES_IN_FRONT_OF_CAMERA / camera.size();
            Instant load = call.plus(minutes(30 + 12 * later++));
            for (ScriptedRoll roll : camera) {
                Instant pull = load.plus(minutes(slot - random.nextInt(6, 16)));
                timeline.at(load, () -> crew.load(roll, dayId));
                timeline.at(pull, () -> crew.pull(roll));
                pulled.add(new Pulled(roll, pull));
                load = load.plus(minutes(slot));
            }
        }
        pulled.sort(Comparator.comparing(Pulled::at));
        return pulled;
    }

    /** One card after the other at each unit's station; returns when the last is copied. */
    private Instant offload(UnitDay day, List<Pulled> pulled, Instant call) {
        Instant free = call;
        for (Pulled next : pulled) {
            Instant start = later(next.at().plus(minutes(random.nextInt(5, 15))), free);
            if (next.roll().code().equals(BROKE_OFF)) {
                start(day, next.roll(), start);
                timeline.at(
                        start.plus(minutes(6)),
                        () -> crew.abandonOffload(next.roll(), "The reader lost the card; other slot taken."));
                start = start.plus(minutes(11));
            }
            start(day, next.roll(), start);
            Instant end = start.plus(copyingTime(day, next.roll()));
            timeline.at(end, () -> crew.finishOffload(next.roll()));
            free = end.plus(minutes(4));
        }
        return free;
    }

    private void start(UnitDay day, ScriptedRoll roll, Instant at) {
        String reader = day.main() ? "READER-" + random.nextInt(1, 3) : "READER-3";
        @Nullable String adapter = day.main() ? null : "ADAPTER-1";
        timeline.at(at, () -> crew.startOffload(roll, reader, adapter, plan.shuttleOf(day.mainDay()), "ARRAY-1"));
    }

    /** Most sessions stay a little below what the slowest link passes; one in twelve takes about twice as long. */
    private Duration copyingTime(UnitDay day, ScriptedRoll roll) {
        long expected = day.main() ? Stock.SHUTTLE_BYTES_PER_SECOND : Stock.ADAPTER_BYTES_PER_SECOND;
        double reached = random.nextInt(12) == 0 ? random.nextDouble(0.45, 0.62) : random.nextDouble(0.84, 0.97);
        return Duration.ofSeconds((long) (roll.sizeBytes() / (expected * reached)));
    }

    private void sendLists(UnitDay day, Instant at) {
        String name = name(day);
        List<Listed> sound = Listed.sound(day.rolls());
        timeline.at(at, () -> crew.sendForCards(Paperwork.bsd(name + "-cards", sound)));
        timeline.at(
                at.plus(minutes(9)),
                () -> crew.sendForCopies(
                        Paperwork.mhlInPlace(name + "-" + plan.shuttleOf(day.mainDay()), at, "set-station", sound),
                        plan.shuttleOf(day.mainDay())));
        timeline.at(
                at.plus(minutes(21)),
                () -> crew.sendForCopies(Paperwork.gnuMd5(name + "-ARRAY-1", onArray(day)), "ARRAY-1"));
        day.rolls().stream()
                .filter(roll -> roll.code().equals(CONSISTENT))
                .forEach(roll -> timeline.at(
                        at.plus(minutes(24)),
                        () -> crew.sendForCopies(
                                Paperwork.mhlTransfer(
                                        name + "-" + CONSISTENT + "-ARRAY-1",
                                        at,
                                        "office-station",
                                        Listed.sound(List.of(roll))),
                                "ARRAY-1")));
        day.rolls().stream()
                .filter(roll -> roll.code().equals(MADE_AGAIN))
                .forEach(roll -> makeAgain(roll, name, at.plus(minutes(40))));
    }

    private static List<Listed> onArray(UnitDay day) {
        return day.rolls().stream()
                .filter(roll -> !roll.code().equals(CONSISTENT))
                .map(roll -> new Listed(
                        roll,
                        switch (roll.code()) {
                            case FAILED -> Flaw.otherBytes(3);
                            case MADE_AGAIN -> Flaw.otherBytes(1);
                            default -> Flaw.NONE;
                        }))
                .toList();
    }

    private void makeAgain(ScriptedRoll roll, String name, Instant at) {
        Instant end = at.plusSeconds(roll.sizeBytes() / (Stock.ARRAY_BYTES_PER_SECOND * 9 / 10));
        timeline.at(at, () -> crew.startOffload(roll, "READER-1", null, "ARRAY-1"));
        timeline.at(end, () -> crew.finishOffload(roll));
        timeline.at(
                end.plus(minutes(15)),
                () -> crew.sendForCopies(
                        Paperwork.gnuMd5(name + "-" + roll.code() + "-again-ARRAY-1", Listed.sound(List.of(roll))),
                        "ARRAY-1"));
    }

    private void shipShuttle(UnitDay day, Instant at) {
        String shuttle = plan.shuttleOf(day.mainDay());
        LocalDate back = dates.dateOfMainDay(day.mainDay()).plusDays(5);
        timeline.at(
                at, () -> crew.ship(shuttle, Stock.POST, "night courier", at.plus(SHUTTLE_COMES_WITHIN), name(day)));
        timeline.at(at.plus(SHUTTLE_TRAVELS), () -> crew.confirmArrival(shuttle));
        timeline.at(dates.at(back, 7, 30), () -> crew.bringBack(shuttle, Stock.SET));
    }

    /** Tapes are written overnight from the shuttle; a day's rolls may lie on two of them. */
    private void sendTapeLists(UnitDay day, Instant at) {
        Map<String, List<Listed>> byTape = new LinkedHashMap<>();
        for (ScriptedRoll roll : day.rolls()) {
            Flaw flaw = roll.code().equals(INCOMPLETE) ? Flaw.missing(2) : Flaw.NONE;
            byTape.computeIfAbsent(plan.tapes().next(roll), tape -> new ArrayList<>())
                    .add(new Listed(roll, flaw));
        }
        byTape.forEach((tape, rolls) ->
                timeline.at(at, () -> crew.sendForCopies(Paperwork.gnuMd5(name(day) + "-" + tape, rolls), tape)));
        List<String> tapes = List.copyOf(byTape.keySet());
        tapes.subList(0, tapes.size() - 1)
                .forEach(full ->
                        timeline.at(at.plus(minutes(100)), () -> crew.send(full, Stock.VAULT, "vault keeper", "full")));
    }

    private void clear(UnitDay day, Instant at) {
        Instant next = at;
        for (ScriptedRoll roll : day.rolls()) {
            if (List.of(FAILED, INCOMPLETE, CONSISTENT).contains(roll.code())) {
                continue;
            }
            timeline.at(next, () -> crew.clear(roll));
            timeline.at(next.plus(minutes(16)), () -> crew.erase(roll));
            next = next.plusSeconds(50);
        }
    }

    /** Each night of the shoot. */
    void forecasts() {
        for (LocalDate date = dates.dateOfMainDay(1); !date.isAfter(dates.workDate()); date = date.plusDays(1)) {
            timeline.at(dates.at(date, 3, 0), crew::forecast);
        }
    }

    /** A hired shuttle goes back soon; one that stays is on order in its place. */
    void order() {
        LocalDate yesterday = dates.dateOfMainDay(StoryDates.TODAY - 1);
        LocalDate expected = dates.dateOfMainDay(StoryDates.TODAY + 2);
        timeline.at(
                dates.at(yesterday, 11, 20),
                () -> crew.order(
                        new Purchasing.Wanted(
                                Purchasing.SHUTTLE, 2, show.legs().get(Stock.SHUTTLE), DeliveredTo.SET, "by telephone"),
                        yesterday,
                        expected));
        timeline.at(
                dates.at(dates.dateOfMainDay(6), 10, 5),
                () -> crew.askForAndDecline(
                        new Purchasing.Wanted(
                                Purchasing.TAPE, 5, show.legs().get(Stock.TAPE), DeliveredTo.OFFICE, "one pack more"),
                        "Eight tapes last until the second week; ask again then."));
        LocalDate ordered = dates.dateOfMainDay(6);
        LocalDate came = dates.dateOfMainDay(7);
        timeline.at(dates.at(ordered, 9, 30), () -> crew.orderReaders(ordered, came));
        timeline.at(
                dates.at(came, 16, 20),
                () -> crew.receiveOneBroken(Stock.SET, came, dates.dateOfMainDay(StoryDates.SLIPPED)));
        timeline.at(
                dates.at(yesterday, 19, 40),
                () -> crew.askFor(new Purchasing.Wanted(
                        Purchasing.READER, 1, null, DeliveredTo.SET, "one slot is slow when both cameras pull")));
    }

    /** People have given their addresses before yesterday’s wrap, and are told of it half an hour after it. */
    void mail() {
        Instant call = dates.callOf(StoryDates.TODAY - 1);
        timeline.at(call, crew::giveAddresses);
        timeline.at(call.plus(DAY_LENGTH).plus(minutes(31)), crew::writeMail);
    }

    /** The bent card on its way to the office, which should have come by now. */
    void sendTheBentCard() {
        Instant noon = dates.at(dates.dateOfMainDay(StoryDates.TODAY - 1), 12, 10);
        timeline.at(
                noon,
                () -> crew.ship(
                        "CARD-024", Stock.OFFICE, "day courier", noon.plus(Duration.ofHours(6)), "To be exchanged."));
    }

    static String name(UnitDay day) {
        return "%s-day-%02d".formatted(day.main() ? "main" : "second", day.number());
    }

    static Duration minutes(long minutes) {
        return Duration.ofMinutes(minutes);
    }

    private static Instant later(Instant one, Instant other) {
        return one.isAfter(other) ? one : other;
    }
}
