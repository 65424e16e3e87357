package rollbook.forecast;

import java.math.BigDecimal;
import java.sql.Date;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.TestProduction;

/**
 * A show around today, put straight into the tables. Its format makes 24 MB/s, so 1.44 GB a minute; days are named by
 * their distance from today: -1 is yesterday.
 */
public final class StorageShow {
    public static final long GB = 1_000_000_000L;
    static final long BYTES_PER_MINUTE = 24_000_000L * 60;

    public final TestProduction production;
    public final LocalDate today = LocalDate.now(ZoneId.of("Europe/Lisbon"));
    final UUID set;
    final UUID unit;
    final UUID camera;
    final UUID format;
    final UUID card;
    private final JdbcClient jdbc;
    private int rolls;
    private int legs;
    private int suppliers;

    public StorageShow(Fixtures fixtures, JdbcClient jdbc) {
        this.jdbc = jdbc;
        production = fixtures.production();
        set = production.place("Set", false);
        unit = production.unit("Main");
        camera = production.camera(unit, "A");
        format = production.format("Test format");
        card = production.item("CARD-1", "CARD", set, null);
    }

    public LocalDate date(int daysFromToday) {
        return today.plusDays(daysFromToday);
    }

    public UUID day(int number, int daysFromToday, String state, int plannedMinutes) {
        return day(unit, number, daysFromToday, state, plannedMinutes);
    }

    UUID day(UUID ofUnit, int number, int daysFromToday, String state, int plannedMinutes) {
        UUID day = UUID.randomUUID();
        jdbc.sql("insert into schedule_day (id, production_id, unit_id, number, date, state) values (?, ?, ?, ?, ?, ?)")
                .params(day, production.id, ofUnit, number, Date.valueOf(date(daysFromToday)), state)
                .update();
        jdbc.sql("insert into schedule_plan (day_id, camera_id, format_id, minutes) values (?, ?, ?, ?)")
                .params(day, camera, format, plannedMinutes)
                .update();
        return day;
    }

    UUID leg(String name, @Nullable Integer returnsAfterDays, int encodedPercent) {
        UUID leg = UUID.randomUUID();
        jdbc.sql("""
                        insert into production_leg (id, production_id, name, media_kind, place_id, rendition, kept_percent,
                            returns_after_days, needed_to_clear, position)
                        values (?, ?, ?, 'DRIVE', ?, ?, ?, ?, true, ?)
                        """)
                .param(leg)
                .param(production.id)
                .param(name)
                .param(set)
                .param(encodedPercent == 100 ? "AS_RECORDED" : "ENCODED")
                .param(encodedPercent)
                .param(returnsAfterDays)
                .param(++legs)
                .update();
        return leg;
    }

    public UUID keptLeg(String name) {
        return leg(name, null, 100);
    }

    public UUID drive(String code, UUID leg, long capacityGb) {
        UUID drive = production.item(code, "DRIVE", set, leg);
        jdbc.sql("update inventory_item set capacity_bytes = ? where id = ?")
                .params(capacityGb * GB, drive)
                .update();
        return drive;
    }

    public void hiredUntil(UUID item, int daysFromToday) {
        jdbc.sql("update inventory_item set ownership = 'HIRED', hired_until = ? where id = ?")
                .params(Date.valueOf(date(daysFromToday)), item)
                .update();
    }

    public void condition(UUID item, String condition) {
        jdbc.sql("update inventory_item set condition = ? where id = ?")
                .params(condition, item)
                .update();
    }

    /** A roll that was pulled; of unknown size if that is null. */
    UUID roll(UUID day, @Nullable Long sizeBytes, double minutes) {
        UUID roll = UUID.randomUUID();
        UUID person = production.as(Role.WRANGLER).personId();
        jdbc.sql("""
                        insert into offload_roll (id, production_id, code, camera_id, day_id, card_id, format_id, loaded_at,
                            loaded_by, pulled_at, pulled_by, minutes, size_bytes)
                        values (?, ?, ?, ?, ?, ?, ?, now(), ?, now(), ?, ?, ?)
                        """)
                .param(roll)
                .param(production.id)
                .param("A%03d".formatted(++rolls))
                .param(camera)
                .param(day)
                .param(card)
                .param(format)
                .param(person)
                .param(person)
                .param(BigDecimal.valueOf(minutes))
                .param(sizeBytes)
                .update();
        return roll;
    }

    void encoded(UUID roll, long encodedBytes) {
        jdbc.sql("update offload_roll set encoded_bytes = ? where id = ?")
                .params(encodedBytes, roll)
                .update();
    }

    void copy(UUID roll, UUID item, UUID leg, String rendition) {
        jdbc.sql("""
                        insert into offload_copy (id, production_id, roll_id, item_id, leg_id, rendition, written_from, created_at)
                        values (?, ?, ?, ?, ?, ?, now(), now())
                        """)
                .params(UUID.randomUUID(), production.id, roll, item, leg, rendition)
                .update();
    }

    void copy(UUID roll, UUID item, UUID leg) {
        copy(roll, item, leg, "AS_RECORDED");
    }

    /** Each leg from a supplier of its own, which delivers to the office; returns the item that is bought there. */
    public UUID supply(UUID leg, long capacityGb, int pack, int leadTime, int slowLeadTime, long priceCents) {
        UUID supplier = UUID.randomUUID();
        UUID item = UUID.randomUUID();
        jdbc.sql("""
                        insert into supplier_supplier (id, production_id, name, order_cut_off, delivery_minor_units,
                            lead_time_working_days, slow_lead_time_working_days)
                        values (?, ?, ?, '16:00', 0, ?, ?)
                        """)
                .params(supplier, production.id, "Supplier " + ++suppliers, leadTime, slowLeadTime)
                .update();
        jdbc.sql("""
                        insert into supplier_item (id, supplier_id, kind, model, capacity_bytes, pack_size)
                        select ?, ?, media_kind, 'test model', ?, ? from production_leg where id = ?
                        """).params(item, supplier, capacityGb * GB, pack, leg).update();
        price(item, 1, priceCents, null);
        jdbc.sql("""
                        insert into forecast_supply (leg_id, production_id, catalogue_item_id, delivered_to)
                        values (?, ?, ?, 'OFFICE')
                        """).params(leg, production.id, item).update();
        return item;
    }

    /** From today on, hired for two weeks at least. */
    void price(UUID item, int number, @Nullable Long cents, @Nullable Long hireWeekCents) {
        jdbc.sql("""
                        insert into supplier_price (item_id, number, entered_at, valid_from, item_minor_units,
                            hire_week_minor_units, hire_minimum_weeks)
                        values (?, ?, now(), ?, ?, ?, ?)
                        """)
                .param(item)
                .param(number)
                .param(Date.valueOf(today))
                .param(cents)
                .param(hireWeekCents)
                .param(hireWeekCents == null ? null : 2)
                .update();
    }

    public void everyDayIsAWorkingDay() {
        jdbc.sql(
                        "update production_production set working_days = 'MONDAY,TUESDAY,WEDNESDAY,THURSDAY,FRIDAY,SATURDAY,SUNDAY' where id = ?")
                .param(production.id)
                .update();
    }

    void fillLevel(int percent) {
        jdbc.sql("insert into forecast_assumption (production_id, fill_percent) values (?, ?)")
                .params(production.id, percent)
                .update();
    }
}
