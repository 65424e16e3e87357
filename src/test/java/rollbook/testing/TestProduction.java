package rollbook.testing;

import java.math.BigDecimal;
import java.sql.Date;
import java.time.LocalDate;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors;
import org.springframework.test.web.servlet.request.RequestPostProcessor;
import rollbook.production.Membership;
import rollbook.production.Role;

/** A production of one test. What it holds is put straight into the tables, so that a test depends on what it tests only. */
public final class TestProduction {
    public static final LocalDate FIRST_DATE = LocalDate.of(2031, 3, 3);

    private final Fixtures fixtures;
    public final UUID id;
    public final String code;
    private final Map<Role, Membership> members;

    TestProduction(Fixtures fixtures, UUID id, String code, Map<Role, Membership> members) {
        this.fixtures = fixtures;
        this.id = id;
        this.code = code;
        this.members = members;
    }

    public Membership as(Role role) {
        return members.get(role);
    }

    /** Signs a MockMvc request in, with a valid CSRF token. */
    public RequestPostProcessor signedInAs(Role role) {
        RequestPostProcessor user = SecurityMockMvcRequestPostProcessors.user(fixtures.account(code, role));
        return request ->
                SecurityMockMvcRequestPostProcessors.csrf().postProcessRequest(user.postProcessRequest(request));
    }

    /** The path of a page, such as {@code path("rolls")}. */
    public String path(String page) {
        return "/p/" + code + "/" + page;
    }

    public UUID place(String name, boolean offSite) {
        return insert(
                "insert into production_place (id, production_id, name, off_site, position) values (?, ?, ?, ?, 1)",
                name,
                offSite);
    }

    public UUID unit(String name) {
        return insert("insert into production_unit (id, production_id, name, position) values (?, ?, ?, 1)", name);
    }

    public UUID camera(UUID unitId, String letter) {
        return insert(
                "insert into production_camera (id, production_id, unit_id, letter) values (?, ?, ?, ?)",
                unitId,
                letter);
    }

    /** A leg for drives as recorded that are kept. */
    public UUID leg(String name, UUID placeId, boolean neededToClear) {
        return insert("""
                insert into production_leg (id, production_id, name, media_kind, place_id, rendition, needed_to_clear, position)
                values (?, ?, ?, 'DRIVE', ?, 'AS_RECORDED', ?, (select count(*) + 1 from production_leg))
                """, name, placeId, neededToClear);
    }

    /** A good item of 1 TB that reads and writes 500 MB/s; a card is blank. */
    public UUID item(String itemCode, String kind, UUID placeId, @Nullable UUID legId) {
        UUID item = insert("""
                insert into inventory_item (id, production_id, code, kind, model, capacity_bytes, read_bytes_per_second,
                    write_bytes_per_second, ownership, place_id, condition, card_state, created_at, leg_id)
                values (?, ?, ?, ?, 'test model', 1000000000000, 500000000, 500000000, 'BOUGHT', ?, 'GOOD', ?, now(), ?)
                """, itemCode, kind, placeId, kind.equals("CARD") ? "BLANK" : null, legId);
        fixtures.jdbc
                .sql("""
                        insert into inventory_custody (production_id, item_id, at, act, place_id, condition, person_id)
                        values (?, ?, now(), 'REGISTERED', ?, 'GOOD', ?)
                        """)
                .params(id, item, placeId, as(Role.ADMINISTRATOR).personId())
                .update();
        return item;
    }

    public UUID day(UUID unitId, int number, String state) {
        return insert(
                "insert into schedule_day (id, production_id, unit_id, number, date, state) values (?, ?, ?, ?, ?, ?)",
                unitId,
                number,
                Date.valueOf(FIRST_DATE.plusDays(number - 1L)),
                state);
    }

    /** 2048 by 1080 at 24 frames a second, 1,000,000 bytes a frame: 24 MB/s. */
    public UUID format(String name) {
        return insert("""
                insert into format_recording_format (id, production_id, name, width_photosites, height_photosites,
                    frame_rate_numerator, frame_rate_denominator, coding, coding_values)
                values (?, ?, ?, 2048, 1080, 24, 1, 'FIXED_FRAME', '{"bytesPerFrame": 1000000}')
                """, name);
    }

    public void plan(UUID dayId, UUID cameraId, UUID formatId, String minutes) {
        fixtures.jdbc
                .sql("insert into schedule_plan (day_id, camera_id, format_id, minutes) values (?, ?, ?, ?)")
                .params(dayId, cameraId, formatId, new BigDecimal(minutes))
                .update();
    }

    /** What clears a card: so many proven copies, on as many items. */
    public void policy(int provenCopies) {
        fixtures.jdbc
                .sql(
                        "update production_clearing_policy set proven_copies = ?, items = ? where production_id = ? and subject = 'CARD'")
                .params(provenCopies, provenCopies, id)
                .update();
    }

    private UUID insert(String sql, @Nullable Object... values) {
        UUID row = UUID.randomUUID();
        fixtures.jdbc.sql(sql).param(row).param(id).params(values).update();
        return row;
    }
}
