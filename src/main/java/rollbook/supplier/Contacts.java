package rollbook.supplier;

import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.production.Membership;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** Whom to ask at which supplier. */
@Service
public class Contacts {
    private final JdbcClient jdbc;
    private final Suppliers suppliers;
    private final AuditTrail trail;

    Contacts(JdbcClient jdbc, Suppliers suppliers, AuditTrail trail) {
        this.jdbc = jdbc;
        this.suppliers = suppliers;
        this.trail = trail;
    }

    /** Of a supplier; none if this production has no such supplier. */
    public List<Contact> of(UUID productionId, UUID supplierId) {
        return jdbc.sql("""
                        select c.id, c.role, c.name, c.phone, c.email, c.version
                        from supplier_contact c join supplier_supplier s on s.id = c.supplier_id
                        where s.production_id = ? and s.id = ? order by lower(c.role), lower(c.name), c.id
                        """)
                .params(productionId, supplierId)
                .query(Contact.class)
                .list();
    }

    /** Of a supplier that the caller has looked up. */
    List<Contact> list(MediaSupplier supplier) {
        return jdbc.sql("""
                        select id, role, name, phone, email, version from supplier_contact where supplier_id = ?
                        order by lower(role), lower(name), id
                        """).param(supplier.id()).query(Contact.class).list();
    }

    /** @throws NotFoundException if that supplier has no such contact */
    Contact get(MediaSupplier supplier, UUID contactId) {
        return list(supplier).stream()
                .filter(contact -> contact.id().equals(contactId))
                .findFirst()
                .orElseThrow(NotFoundException::new);
    }

    @Transactional
    public void add(Membership by, UUID supplierId, String role, String name, String phone, String email) {
        MediaSupplier supplier = suppliers.get(by.productionId(), supplierId);
        jdbc.sql("insert into supplier_contact (id, supplier_id, role, name, phone, email) values (?, ?, ?, ?, ?, ?)")
                .params(UUID.randomUUID(), supplierId, role, name, phone, email)
                .update();
        trail.add(by.act("supplier.contact-added", "supplier", supplier.name(), role));
    }

    /** @throws Refusal if somebody else changed it meanwhile */
    @Transactional
    void change(Membership by, UUID supplierId, Contact contact) {
        MediaSupplier supplier = suppliers.get(by.productionId(), supplierId);
        int changed = jdbc.sql("""
                        update supplier_contact set role = ?, name = ?, phone = ?, email = ?, version = version + 1
                        where supplier_id = ? and id = ? and version = ?
                        """)
                .params(
                        contact.role(),
                        contact.name(),
                        contact.phone(),
                        contact.email(),
                        supplierId,
                        contact.id(),
                        contact.version())
                .update();
        if (changed == 0) {
            throw new Refusal("supplier.refused.changed", contact.role());
        }
        trail.add(by.act("supplier.contact-changed", "supplier", supplier.name(), contact.role()));
    }

    @Transactional
    void remove(Membership by, UUID supplierId, UUID contactId) {
        MediaSupplier supplier = suppliers.get(by.productionId(), supplierId);
        Contact contact = get(supplier, contactId);
        jdbc.sql("delete from supplier_contact where supplier_id = ? and id = ?")
                .params(supplierId, contactId)
                .update();
        trail.add(by.act("supplier.contact-removed", "supplier", supplier.name(), contact.role()));
    }
}
