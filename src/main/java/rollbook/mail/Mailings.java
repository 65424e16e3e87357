package rollbook.mail;

import java.sql.Timestamp;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.context.event.EventListener;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.production.Alarm;
import rollbook.schedule.DayState;
import rollbook.schedule.DayWrapped;
import rollbook.schedule.ShootingDay;
import rollbook.schedule.ShootingDays;

/** Writes the mail that is due: after a wrapped day, on Monday morning, and whenever an alarm is raised. */
@Service
public class Mailings {
    /** After a wrap the last cards are still being copied, and the other unit may wrap. */
    static final Duration AFTER_WRAP = Duration.ofMinutes(30);
    /** How a wrapped day stood is no news any more after this. */
    private static final Duration NEWS_FOR = Duration.ofHours(12);

    /** The office has work to do for so long after the last shooting day. */
    private static final int GOES_ON_DAYS = 28;

    private static final LocalTime MORNING = LocalTime.of(8, 0);

    private final JdbcClient jdbc;
    private final Subscriptions subscriptions;
    private final FactFinder finder;
    private final Letters letters;
    private final Outbox outbox;
    private final ShootingDays days;
    private final Clock clock;

    Mailings(
            JdbcClient jdbc,
            Subscriptions subscriptions,
            FactFinder finder,
            Letters letters,
            Outbox outbox,
            ShootingDays days,
            Clock clock) {
        this.jdbc = jdbc;
        this.subscriptions = subscriptions;
        this.finder = finder;
        this.letters = letters;
        this.outbox = outbox;
        this.days = days;
        this.clock = clock;
    }

    @EventListener
    @Transactional(propagation = Propagation.MANDATORY)
    public void onDayWrapped(DayWrapped wrapped) {
        jdbc.sql("""
                        insert into mail_wrapped_day (day_id, production_id, wrapped_at) values (?, ?, ?)
                        on conflict (day_id) do update set wrapped_at = excluded.wrapped_at
                        """)
                .params(wrapped.dayId(), wrapped.productionId(), Timestamp.from(clock.instant()))
                .update();
    }

    /** Writes what is due in a production now; nobody is told anything twice, however often it is called. */
    @Transactional
    public void write(UUID productionId) {
        List<Addressee> everyone = subscriptions.addressees(productionId);
        alarms(productionId, wanting(everyone, Kind.ALARM));
        digests(productionId, wanting(everyone, Kind.DIGEST));
        weeklies(productionId, wanting(everyone, Kind.WEEKLY));
    }

    private static List<Addressee> wanting(List<Addressee> everyone, Kind kind) {
        return everyone.stream()
                .filter(addressee -> addressee.subscription().wants(kind))
                .toList();
    }

    private record Told(UUID personId, String about) {}

    private Set<Told> told(UUID productionId, List<String> abouts) {
        return Set.copyOf(jdbc.sql(
                        "select person_id, about from mail_told where production_id = :production and about in (:about)")
                .param("production", productionId)
                .param("about", abouts)
                .query(Told.class)
                .list());
    }

    private void alarms(UUID productionId, List<Addressee> to) {
        List<Alarm> standing = to.isEmpty() ? List.of() : finder.alarms(productionId);
        if (standing.isEmpty()) {
            return;
        }
        Set<Told> told =
                told(productionId, standing.stream().map(Mailings::about).toList());
        for (Addressee addressee : to) {
            List<Alarm> unheard = standing.stream()
                    .filter(alarm -> alarm.concerns(addressee.membership().roles()))
                    .filter(alarm ->
                            !told.contains(new Told(addressee.membership().personId(), about(alarm))))
                    .toList();
            if (!unheard.isEmpty()) {
                outbox.write(
                        addressee,
                        Kind.ALARM,
                        letters.of(Drafts.alarm(unheard, addressee.membership()), addressee.membership()),
                        unheard.stream().map(Mailings::about).toList());
            }
        }
    }

    private static String about(Alarm alarm) {
        return "alarm:" + alarm.key();
    }

    private record Due(UUID dayId, Instant wrappedAt) {}

    /** Once one day was wrapped long enough ago, all that were wrapped since, in one letter. */
    private void digests(UUID productionId, List<Addressee> to) {
        Instant now = clock.instant();
        Set<UUID> due = jdbc
                .sql("""
                        delete from mail_wrapped_day where production_id = :production and exists (
                            select 1 from mail_wrapped_day where production_id = :production and wrapped_at <= :due)
                        returning day_id, wrapped_at
                        """)
                .param("production", productionId)
                .param("due", Timestamp.from(now.minus(AFTER_WRAP)))
                .query(Due.class)
                .list()
                .stream()
                .filter(day -> day.wrappedAt().isAfter(now.minus(NEWS_FOR)))
                .map(Due::dayId)
                .collect(Collectors.toSet());
        if (due.isEmpty() || to.isEmpty()) {
            return;
        }
        // One that was opened again meanwhile is wrapped again later.
        List<ShootingDay> wrapped = days.list(productionId).stream()
                .filter(day -> due.contains(day.id()) && day.state() == DayState.WRAPPED)
                .toList();
        if (wrapped.isEmpty()) {
            return;
        }
        Facts facts = finder.facts(to.get(0).membership());
        for (Addressee addressee : to) {
            outbox.write(
                    addressee,
                    Kind.DIGEST,
                    letters.of(Drafts.digest(facts, wrapped, addressee.membership()), addressee.membership()),
                    wrapped.stream().map(day -> "day:" + day.id()).toList());
        }
    }

    /** On Monday from the morning on, for the portal may have been off at that hour. */
    private void weeklies(UUID productionId, List<Addressee> to) {
        if (to.isEmpty()) {
            return;
        }
        ZoneId zone = to.get(0).membership().zone();
        ZonedDateTime there = clock.instant().atZone(zone);
        if (there.getDayOfWeek() != DayOfWeek.MONDAY || there.toLocalTime().isBefore(MORNING)) {
            return;
        }
        String about = "week:" + there.toLocalDate();
        Set<UUID> told =
                told(productionId, List.of(about)).stream().map(Told::personId).collect(Collectors.toSet());
        List<Addressee> untold = to.stream()
                .filter(addressee -> !told.contains(addressee.membership().personId()))
                .toList();
        if (untold.isEmpty() || isOver(productionId, there.toLocalDate())) {
            return;
        }
        Facts facts = finder.facts(untold.get(0).membership());
        for (Addressee addressee : untold) {
            outbox.write(
                    addressee,
                    Kind.WEEKLY,
                    letters.of(Drafts.weekly(facts, addressee.membership()), addressee.membership()),
                    List.of(about));
        }
    }

    private boolean isOver(UUID productionId, LocalDate today) {
        return days.list(productionId).stream()
                .filter(day -> day.state() != DayState.CANCELLED)
                .noneMatch(day -> day.date().isAfter(today.minusDays(GOES_ON_DAYS)));
    }
}
