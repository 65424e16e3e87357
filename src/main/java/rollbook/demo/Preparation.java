package rollbook.demo;

import java.math.BigDecimal;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import rollbook.format.RecordingFormats;
import rollbook.people.People;
import rollbook.production.CameraUnits;
import rollbook.production.ClearingPolicy;
import rollbook.production.CopyPlan;
import rollbook.production.Leg;
import rollbook.production.MediaKind;
import rollbook.production.Membership;
import rollbook.production.Memberships;
import rollbook.production.Places;
import rollbook.production.Productions;
import rollbook.production.Rendition;
import rollbook.schedule.CameraPlan;
import rollbook.schedule.NewSchedule;
import rollbook.schedule.Schedule;
import rollbook.schedule.ShootingDay;
import rollbook.schedule.ShootingDays;
import rollbook.verification.RecheckPlan;
import rollbook.verification.Rechecks;

/** What people do before the first shooting day: the production, its copy plan, its media and its schedule. */
@Component
@Profile("demo")
class Preparation {
    private final People people;
    private final Productions productions;
    private final Memberships memberships;
    private final Places places;
    private final CameraUnits units;
    private final CopyPlan plan;
    private final Rechecks rechecks;
    private final RecordingFormats formats;
    private final Stock stock;
    private final Sourcing sourcing;
    private final Rentals rentals;
    private final Schedule schedule;
    private final ShootingDays days;
    private final DemoClock clock;

    Preparation(
            People people,
            Productions productions,
            Memberships memberships,
            Places places,
            CameraUnits units,
            CopyPlan plan,
            Rechecks rechecks,
            RecordingFormats formats,
            Stock stock,
            Sourcing sourcing,
            Rentals rentals,
            Schedule schedule,
            ShootingDays days,
            DemoClock clock) {
        this.people = people;
        this.productions = productions;
        this.memberships = memberships;
        this.places = places;
        this.units = units;
        this.plan = plan;
        this.rechecks = rechecks;
        this.formats = formats;
        this.stock = stock;
        this.sourcing = sourcing;
        this.rentals = rentals;
        this.schedule = schedule;
        this.days = days;
        this.clock = clock;
    }

    Show prepare(StoryDates dates) {
        clock.tell(dates.daysBefore(20));
        Map<Account, UUID> accounts = accounts();
        UUID production = productions.create(
                Show.CODE,
                Show.TITLE,
                Show.ZONE,
                Show.CURRENCY,
                accounts.get(Account.ADMINISTRATOR),
                Account.ADMINISTRATOR.displayName);
        Membership administrator =
                Show.membership(production, Account.ADMINISTRATOR, accounts.get(Account.ADMINISTRATOR));
        Membership office = Show.membership(production, Account.OFFICE, accounts.get(Account.OFFICE));
        accounts.forEach((account, person) -> {
            if (account != Account.ADMINISTRATOR) {
                memberships.add(administrator, person, account.signInName(), EnumSet.of(account.role));
            }
        });
        Map<String, UUID> placeIds = places(administrator);
        Map<String, UUID> legs = legs(administrator, placeIds);
        sourcing.source(office, legs, dates);
        UUID main = units.addUnit(administrator, "Main unit");
        UUID second = units.addUnit(administrator, "Second unit");
        Map<Character, UUID> cameras = Map.of(
                'A', units.addCamera(administrator, main, "A"),
                'B', units.addCamera(administrator, main, "B"),
                'C', units.addCamera(administrator, second, "C"));
        clock.tell(dates.daysBefore(14));
        Map<Shot, UUID> shots = new EnumMap<>(Shot.class);
        for (Shot shot : Shot.values()) {
            shots.put(shot, formats.add(office, shot.format));
        }
        Map<String, UUID> items = stock.register(office, placeIds, legs, dates);
        rentals.agree(office, items, dates);
        clock.tell(dates.daysBefore(9));
        return new Show(
                production,
                accounts,
                placeIds,
                legs,
                shots,
                main,
                second,
                cameras,
                items,
                mainDays(office, main, cameras, shots, dates.enteredDates()),
                schedule.enter(
                        office,
                        new NewSchedule(
                                second,
                                1,
                                dates.secondUnitDates(),
                                List.of(minutes(cameras.get('C'), shots.get(Shot.SECOND_UNIT), 150)))));
    }

    private Map<Account, UUID> accounts() {
        Map<Account, UUID> accounts = new EnumMap<>(Account.class);
        for (Account account : Account.values()) {
            accounts.put(account, people.add(account.signInName(), account.displayName, Account.PASSWORD));
        }
        return accounts;
    }

    private Map<String, UUID> places(Membership administrator) {
        Map<String, UUID> ids = new LinkedHashMap<>();
        ids.put(Stock.SET, places.add(administrator, Stock.SET, false, "storm"));
        ids.put(Stock.OFFICE, places.add(administrator, Stock.OFFICE, false, "storm"));
        ids.put(Stock.POST, places.add(administrator, Stock.POST, true, ""));
        ids.put(Stock.VAULT, places.add(administrator, Stock.VAULT, true, "fire"));
        return ids;
    }

    private Map<String, UUID> legs(Membership administrator, Map<String, UUID> placeIds) {
        Map<String, UUID> ids = new LinkedHashMap<>();
        ids.put(Stock.SHUTTLE, leg(administrator, Stock.SHUTTLE, MediaKind.DRIVE, placeIds.get(Stock.SET), 5, false));
        ids.put(Stock.ARRAY, leg(administrator, Stock.ARRAY, MediaKind.ARRAY, placeIds.get(Stock.OFFICE), null, true));
        ids.put(Stock.TAPE, leg(administrator, Stock.TAPE, MediaKind.TAPE, placeIds.get(Stock.VAULT), null, true));
        plan.changePolicy(administrator, new ClearingPolicy(MediaKind.CARD, 2, 2, 2, 2, true, null, true, true, 0));
        rechecks.changePlan(administrator, new RecheckPlan(10, 30, 180, RecheckPlan.NONE.version()));
        return ids;
    }

    private UUID leg(
            Membership administrator,
            String name,
            MediaKind kind,
            UUID place,
            @Nullable Integer returnsAfterDays,
            boolean needed) {
        return plan.addLeg(
                administrator,
                new Leg(
                        new UUID(0, 0),
                        name,
                        kind,
                        place,
                        "",
                        Rendition.AS_RECORDED,
                        100,
                        returnsAfterDays,
                        needed,
                        0));
    }

    /** The two weeks in the middle are the heavier ones. */
    private List<UUID> mainDays(
            Membership office, UUID unit, Map<Character, UUID> cameras, Map<Shot, UUID> shots, List<LocalDate> dates) {
        List<UUID> days = new ArrayList<>();
        for (Run run : Run.ALL) {
            days.addAll(schedule.enter(
                    office,
                    new NewSchedule(
                            unit, run.first(), dates.subList(run.first() - 1, run.last()), run.plan(cameras, shots))));
        }
        return days;
    }

    /** Days of the main unit that are planned alike. */
    private record Run(int first, int last, int usualMinutes, int effectsMinutes) {
        static final List<Run> ALL =
                List.of(new Run(1, 9, 115, 15), new Run(10, 18, 125, 20), new Run(19, 24, 105, 10));

        List<CameraPlan> plan(Map<Character, UUID> cameras, Map<Shot, UUID> shots) {
            return List.of(
                    minutes(cameras.get('A'), shots.get(Shot.USUAL), usualMinutes),
                    minutes(cameras.get('A'), shots.get(Shot.EFFECTS), effectsMinutes),
                    minutes(cameras.get('B'), shots.get(Shot.USUAL), usualMinutes));
        }
    }

    private static CameraPlan minutes(UUID camera, UUID format, int minutes) {
        return new CameraPlan(camera, format, BigDecimal.valueOf(minutes));
    }

    /** The storm of day 8: it and all later days move one shooting date on. */
    void slip(Show show) {
        Membership office = show.as(Account.OFFICE);
        ShootingDay day = days.get(show.productionId(), show.mainDays().get(StoryDates.SLIPPED - 1));
        schedule.change(
                office,
                day.id(),
                day.number(),
                day.date(),
                "Storm on the quay: a day later than planned.",
                Run.ALL.get(0).plan(show.cameras(), show.formats()),
                day.version());
        schedule.slip(office, day.id(), 1, EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.FRIDAY));
    }
}
