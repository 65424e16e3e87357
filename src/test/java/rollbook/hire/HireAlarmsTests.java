package rollbook.hire;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.hire.HireScene.TODAY;

import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import rollbook.inventory.Custody;
import rollbook.production.Alarm;
import rollbook.production.Role;
import rollbook.supplier.Suppliers;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.StatementCount;
import rollbook.web.Display;

@PortalTest
class HireAlarmsTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    Suppliers suppliers;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    HireAlarms alarms;

    @Autowired
    HireReminders reminders;

    @Autowired
    AgreementBook book;

    @Autowired
    Custody custody;

    @Autowired
    Display display;

    @Autowired
    StatementCount statements;

    private HireScene scene;

    @BeforeEach
    void makeProduction() {
        scene = new HireScene(fixtures, suppliers, jdbc);
    }

    private List<Alarm> alarms() {
        return alarms.alarms(scene.production.id);
    }

    @Test
    void whatIsDueWithinThreeDaysOrOverdueIsToldOnceADayAndAgreement() {
        UUID one = scene.hired("DRIVE-1", "DRIVE", null);
        UUID other = scene.hired("DRIVE-2", "DRIVE", null);
        scene.hired("READER-1", "READER", TODAY.plusDays(4));
        scene.hired("READER-2", "READER", TODAY.minusDays(1));
        UUID agreement = book.agree(scene.office, scene.terms(TODAY.plusDays(3), one, other));

        List<Alarm> told = alarms();
        assertThat(told).hasSize(2);
        assertThat(display.text(told.get(0).messageKey(), told.get(0).args().toArray()))
                .startsWith("READER-2 was due back at hire house on " + display.date(TODAY.minusDays(1)));
        assertThat(told.get(0).since())
                .isEqualTo(TODAY.atStartOfDay(ZoneId.of("Europe/Lisbon")).toInstant());
        assertThat(display.text(told.get(1).messageKey(), told.get(1).args().toArray()))
                .startsWith("DRIVE-1 and 1 more hired item are due back at Hire house on ");
        assertThat(told.get(1).page()).isEqualTo("hire/" + agreement);
        assertThat(told.get(1).concerns(Set.of(Role.OFFICE))).isTrue();
        assertThat(told.get(1).concerns(Set.of(Role.POST))).isFalse();

        custody.giveBack(scene.office, one, "");
        assertThat(alarms().get(1).key())
                .as("the same alarm while the other is still to go back")
                .isEqualTo(told.get(1).key());
        book.extend(scene.office, agreement, TODAY.plusDays(30), Map.of(other, 1L), "", 1);
        assertThat(alarms()).extracting(Alarm::key).containsExactly(told.get(0).key());
    }

    @Test
    void theProductionChoosesHowEarly() {
        scene.hired("READER-1", "READER", TODAY.plusDays(4));
        scene.hired("READER-2", "READER", TODAY);
        assertThat(alarms()).hasSize(1);
        reminders.change(scene.office, new HireReminders.Reminder(4, 0));
        assertThat(alarms()).hasSize(2);
        reminders.change(scene.office, new HireReminders.Reminder(0, 1));
        assertThat(alarms())
                .singleElement()
                .satisfies(alarm -> assertThat(alarm.messageKey())
                        .as("on the due day it isn’t late yet")
                        .isEqualTo("hire.alarm.due"));
    }

    @Test
    void allOfThemAreFoundInOneStatement() throws Exception {
        scene.hired("READER-1", "READER", TODAY);
        assertThat(statements.during(this::alarms)).isEqualTo(1);
        assertThat(alarms.alarms(fixtures.production().id))
                .as("of another production")
                .isEmpty();
    }
}
