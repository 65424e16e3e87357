package rollbook.post;

import java.sql.Array;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.production.Membership;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** The sets of tapes and other kept media that were made, on record for good. */
@Service
public class MediaSets {
    private static final int BATCH = 1_000;

    private static final String SETS = """
            select s.id, s.number, s.leg_id, l.name as leg_name, s.up_to_day_id, d.number as day_number, u.name as unit_name,
                   d.date, s.note, s.reason, s.at, p.display_name as by_name, old.number as replaces_number,
                   newer.number as replaced_by_number, w.at as withdrawn_at, wp.display_name as withdrawn_by_name,
                   w.reason as withdrawn_reason, r.items, r.rolls, r.gaps
            from post_set s
            join production_leg l on l.id = s.leg_id
            join schedule_day d on d.id = s.up_to_day_id
            join production_unit u on u.id = d.unit_id
            join people_person p on p.id = s.by_id
            left join post_set old on old.id = s.replaces
            left join post_set newer on newer.replaces = s.id
            left join post_set_withdrawal w on w.set_id = s.id
            left join people_person wp on wp.id = w.by_id
            cross join lateral (
                select coalesce(array_agg(distinct x.item_code order by x.item_code) filter (where x.item_id is not null), '{}') as items,
                       count(distinct x.roll_id) as rolls,
                       count(distinct x.roll_id) - count(distinct x.roll_id) filter (where x.proven) as gaps
                from post_set_roll x where x.set_id = s.id) r
            where s.production_id = :production
            """;

    private final JdbcClient jdbc;
    private final JdbcTemplate batches;
    private final LegShelf shelf;
    private final AuditTrail trail;
    private final Clock clock;

    MediaSets(JdbcClient jdbc, JdbcTemplate batches, LegShelf shelf, AuditTrail trail, Clock clock) {
        this.jdbc = jdbc;
        this.batches = batches;
        this.shelf = shelf;
        this.trail = trail;
        this.clock = clock;
    }

    /**
     * A set to record.
     *
     * @param reason why it is made although something is missing or isn't proven; empty if the person gives none
     * @param replaces the set that it corrects, or null
     */
    public record NewSet(
            UUID legId,
            UUID upToDayId,
            String note,
            String reason,
            @Nullable UUID replaces) {}

    /** Something is missing or isn't proven, and there is no reason why the set is made all the same. */
    static final class Incomplete extends RuntimeException {
        private final transient List<String> rollCodes;

        Incomplete(List<String> rollCodes) {
            super(rollCodes.size() + " rolls are missing or not proven");
            this.rollCodes = rollCodes;
        }

        List<String> rollCodes() {
            return rollCodes;
        }
    }

    /** All that were recorded, the newest first; in one statement. */
    List<MediaSet> list(UUID productionId) {
        return jdbc.sql(SETS + " order by s.number desc")
                .param("production", productionId)
                .query(MediaSets::set)
                .list();
    }

    MediaSet get(UUID productionId, UUID setId) {
        return jdbc.sql(SETS + " and s.id = :id")
                .param("production", productionId)
                .param("id", setId)
                .query(MediaSets::set)
                .optional()
                .orElseThrow(NotFoundException::new);
    }

    List<SetRoll> rolls(UUID productionId, UUID setId) {
        return jdbc.sql("""
                        select r.roll_id, r.roll_code, r.item_id, r.item_code, r.place, r.verdict, r.proven
                        from post_set_roll r join post_set s on s.id = r.set_id
                        where s.production_id = ? and s.id = ? order by r.position
                        """).params(productionId, setId).query(SetRoll.class).list();
    }

    /**
     * Records that a set was made. What is missing or isn't proven now stands in it for good.
     *
     * @throws Incomplete if something is, and there is no reason
     * @throws Refusal if such a set is on record, or the one to correct was corrected or withdrawn meanwhile
     */
    @Transactional
    public UUID record(Membership by, NewSet made) {
        lockLegs(by.productionId());
        MediaSet old = made.replaces() == null ? null : get(by.productionId(), made.replaces());
        if (old != null && !old.stands()) {
            throw new Refusal("post.refused.set-over", old.number());
        }
        LegContents whole = shelf.of(by.productionId(), made.legId());
        LegContents.Day day = whole.days().stream()
                .filter(one -> one.id().equals(made.upToDayId()))
                .findFirst()
                .orElseThrow(NotFoundException::new);
        refuseTwice(by.productionId(), made, day);
        LegContents contents = whole.upTo(day.date());
        List<String> gaps =
                contents.gaps().stream().map(roll -> roll.roll().code()).toList();
        if (!gaps.isEmpty() && made.reason().isEmpty()) {
            throw new Incomplete(gaps);
        }
        UUID id = UUID.randomUUID();
        int number = jdbc.sql("""
                        insert into post_set (id, production_id, number, leg_id, up_to_day_id, note, reason, at, by_id, replaces)
                        select :id, :production, coalesce(max(number), 0) + 1, :leg, :day, :note, :reason, :at, :by, :replaces
                        from post_set where production_id = :production returning number
                        """)
                .param("id", id)
                .param("production", by.productionId())
                .param("leg", made.legId())
                .param("day", made.upToDayId())
                .param("note", made.note())
                .param("reason", gaps.isEmpty() ? "" : made.reason())
                .param("at", Timestamp.from(clock.instant()))
                .param("by", by.personId())
                .param("replaces", made.replaces())
                .query(Integer.class)
                .single();
        keep(id, contents);
        trail.add(by.act(
                old == null ? "set.made" : "set.corrected",
                "set",
                String.valueOf(number),
                onRecord(contents, day, gaps)));
        return id;
    }

    private void keep(UUID setId, LegContents contents) {
        List<@Nullable Object[]> rows = new ArrayList<>();
        for (LegContents.OnLeg roll : contents.rolls()) {
            if (roll.isMissing()) {
                rows.add(new @Nullable Object[] {
                    setId, rows.size() + 1, roll.roll().id(), roll.roll().code(), null, null, null, null, false
                });
            }
            for (LegContents.Held held : roll.copies()) {
                rows.add(new @Nullable Object[] {
                    setId,
                    rows.size() + 1,
                    roll.roll().id(),
                    roll.roll().code(),
                    held.itemId(),
                    held.itemCode(),
                    held.placeName(),
                    held.verdict().name(),
                    held.proven()
                });
            }
        }
        batches.batchUpdate("""
                insert into post_set_roll (set_id, position, roll_id, roll_code, item_id, item_code, place, verdict, proven)
                values (?, ?, ?, ?, ?, ?, ?, ?, ?)
                """, rows, BATCH, (row, values) -> {
            for (int column = 0; column < values.length; column++) {
                row.setObject(column + 1, values[column]);
            }
        });
    }

    /** A set of the same leg up to the same day stands already. */
    private void refuseTwice(UUID productionId, NewSet made, LegContents.Day day) {
        list(productionId).stream()
                .filter(set -> set.stands() && !set.id().equals(made.replaces()))
                .filter(set -> set.legId().equals(made.legId()) && set.date().equals(day.date()))
                .findFirst()
                .ifPresent(set -> {
                    throw new Refusal("post.refused.set-exists", set.legName(), set.number());
                });
    }

    /**
     * Says that a set never was.
     *
     * @throws Refusal if it was corrected or withdrawn meanwhile
     */
    @Transactional
    public void withdraw(Membership by, UUID setId, String reason) {
        lockLegs(by.productionId());
        MediaSet set = get(by.productionId(), setId);
        if (!set.stands()) {
            throw new Refusal("post.refused.set-over", set.number());
        }
        jdbc.sql("insert into post_set_withdrawal (set_id, at, by_id, reason) values (?, ?, ?, ?)")
                .params(setId, Timestamp.from(clock.instant()), by.personId(), reason)
                .update();
        trail.add(by.act("set.withdrawn", "set", String.valueOf(set.number()), reason));
    }

    /** One after the other: so each sees what the one before recorded, and numbers are taken once. */
    private void lockLegs(UUID productionId) {
        jdbc.sql("select id from production_leg where production_id = ? order by id for no key update")
                .param(productionId)
                .query(UUID.class)
                .list();
    }

    private static String onRecord(LegContents contents, LegContents.Day day, List<String> gaps) {
        String media =
                contents.media().stream().map(LegContents.Medium::itemCode).collect(Collectors.joining(", "));
        return Stream.of(
                        contents.leg().name(),
                        "up to DAY" + day.number() + " " + day.unitName(),
                        media,
                        gaps.isEmpty() ? "" : "without proof of " + String.join(", ", gaps))
                .filter(part -> !part.isEmpty())
                .collect(Collectors.joining("; "));
    }

    private static MediaSet set(ResultSet row, int number) throws SQLException {
        Timestamp withdrawn = row.getTimestamp("withdrawn_at");
        Instant withdrawnAt = withdrawn == null ? null : withdrawn.toInstant();
        return new MediaSet(
                row.getObject("id", UUID.class),
                row.getInt("number"),
                row.getObject("leg_id", UUID.class),
                row.getString("leg_name"),
                row.getObject("up_to_day_id", UUID.class),
                row.getInt("day_number"),
                row.getString("unit_name"),
                row.getDate("date").toLocalDate(),
                row.getString("note"),
                row.getString("reason"),
                row.getTimestamp("at").toInstant(),
                row.getString("by_name"),
                texts(row.getArray("items")),
                row.getInt("rolls"),
                row.getInt("gaps"),
                row.getObject("replaces_number", Integer.class),
                row.getObject("replaced_by_number", Integer.class),
                withdrawnAt,
                row.getString("withdrawn_by_name"),
                row.getString("withdrawn_reason"));
    }

    private static List<String> texts(Array array) throws SQLException {
        return Arrays.asList((String[]) array.getArray());
    }
}
