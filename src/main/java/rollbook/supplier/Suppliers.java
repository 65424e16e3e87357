package rollbook.supplier;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Time;
import java.sql.Types;
import java.time.DayOfWeek;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.production.Membership;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** The suppliers of a production. */
@Service
public class Suppliers {
    static final String NAME_TAKEN = "supplier.refused.name-taken";

    private static final String SUPPLIERS = """
            select id, name, country, working_days, order_cut_off, delivery_minor_units, lead_time_working_days,
                   slow_lead_time_working_days, note, version
            from supplier_supplier where production_id = :production
            """;

    private final JdbcClient jdbc;
    private final AuditTrail trail;
    private final ApplicationEventPublisher events;

    Suppliers(JdbcClient jdbc, AuditTrail trail, ApplicationEventPublisher events) {
        this.jdbc = jdbc;
        this.trail = trail;
        this.events = events;
    }

    public List<MediaSupplier> list(UUID productionId) {
        return jdbc.sql(SUPPLIERS + " order by lower(name)")
                .param("production", productionId)
                .query(Suppliers::supplier)
                .list();
    }

    /** @throws NotFoundException if this production has no such supplier */
    public MediaSupplier get(UUID productionId, UUID supplierId) {
        return jdbc.sql(SUPPLIERS + " and id = :supplier")
                .param("production", productionId)
                .param("supplier", supplierId)
                .query(Suppliers::supplier)
                .optional()
                .orElseThrow(NotFoundException::new);
    }

    /** @throws Refusal if a supplier of that name is there */
    @Transactional
    public UUID add(Membership by, SupplierDetails details) {
        UUID id = UUID.randomUUID();
        int added = with(details, """
                        insert into supplier_supplier (id, production_id, name, country, working_days, order_cut_off,
                            delivery_minor_units, lead_time_working_days, slow_lead_time_working_days, note)
                        values (:id, :production, :name, :country, :workingDays, :cutOff, :delivery, :usual, :slow, :note)
                        on conflict do nothing
                        """)
                .param("id", id)
                .param("production", by.productionId())
                .update();
        if (added == 0) {
            throw new Refusal(NAME_TAKEN, details.name());
        }
        trail.add(by.act("supplier.added", "supplier", details.name(), detail(details)));
        return id;
    }

    /** @throws Refusal if somebody else changed it meanwhile, or another supplier has that name */
    @Transactional
    public void change(Membership by, MediaSupplier supplier) {
        SupplierDetails details = supplier.details();
        try {
            int changed = with(details, """
                            update supplier_supplier set name = :name, country = :country, working_days = :workingDays,
                                order_cut_off = :cutOff, delivery_minor_units = :delivery,
                                lead_time_working_days = :usual, slow_lead_time_working_days = :slow, note = :note,
                                version = version + 1
                            where production_id = :production and id = :id and version = :version
                            """)
                    .param("id", supplier.id())
                    .param("production", by.productionId())
                    .param("version", supplier.version())
                    .update();
            if (changed == 0) {
                throw new Refusal("supplier.refused.changed", details.name());
            }
        } catch (DuplicateKeyException taken) {
            throw new Refusal(NAME_TAKEN, details.name());
        }
        trail.add(by.act("supplier.changed", "supplier", details.name(), detail(details)));
        events.publishEvent(new SupplierChanged(by.productionId()));
    }

    /**
     * Takes away a supplier that was entered by mistake, with its contacts.
     *
     * @throws Refusal if something was offered by it or ordered from it
     */
    @Transactional
    public void remove(Membership by, UUID supplierId) {
        String name = get(by.productionId(), supplierId).name();
        try {
            jdbc.sql("delete from supplier_supplier where production_id = ? and id = ?")
                    .params(by.productionId(), supplierId)
                    .update();
        } catch (DataIntegrityViolationException used) {
            throw new Refusal("supplier.refused.in-use", name);
        }
        trail.add(by.act("supplier.removed", "supplier", name, ""));
    }

    private JdbcClient.StatementSpec with(SupplierDetails details, String sql) {
        return jdbc.sql(sql)
                .param("name", details.name())
                .param("country", details.country(), Types.VARCHAR)
                .param("workingDays", weekdays(details.workingDays()))
                .param("cutOff", Time.valueOf(details.orderCutOff()))
                .param("delivery", details.deliveryMinorUnits())
                .param("usual", details.leadTimeWorkingDays())
                .param("slow", details.slowLeadTimeWorkingDays())
                .param("note", details.note());
    }

    private static MediaSupplier supplier(ResultSet row, int number) throws SQLException {
        return new MediaSupplier(
                row.getObject("id", UUID.class),
                new SupplierDetails(
                        row.getString("name"),
                        row.getString("country"),
                        weekdays(row.getString("working_days")),
                        row.getTime("order_cut_off").toLocalTime(),
                        row.getLong("delivery_minor_units"),
                        row.getInt("lead_time_working_days"),
                        row.getInt("slow_lead_time_working_days"),
                        row.getString("note")),
                row.getInt("version"));
    }

    private static String weekdays(Set<DayOfWeek> days) {
        return days.stream().sorted().map(DayOfWeek::name).collect(Collectors.joining(","));
    }

    private static Set<DayOfWeek> weekdays(String names) {
        return Stream.of(names.split(","))
                .filter(name -> !name.isEmpty())
                .map(DayOfWeek::valueOf)
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(DayOfWeek.class)));
    }

    private static String detail(SupplierDetails details) {
        return "lead time %d to %d, orders until %s, delivery %d"
                .formatted(
                        details.leadTimeWorkingDays(),
                        details.slowLeadTimeWorkingDays(),
                        details.orderCutOff(),
                        details.deliveryMinorUnits());
    }
}
