package rollbook.scenario;

import java.util.Map;
import java.util.UUID;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.TestProduction;

/** A production that can play its day 1: camera A, 120 minutes of 24 MB/s, four cards, two readers, a drive. */
final class TurnaroundScene {
    final TestProduction production;
    final UUID day;

    TurnaroundScene(Fixtures fixtures) {
        production = fixtures.production();
        UUID set = production.place("Set truck", false);
        UUID unit = production.unit("Main unit");
        UUID camera = production.camera(unit, "A");
        UUID format = production.format("plain");
        day = production.day(unit, 1, "PLANNED");
        production.plan(day, camera, format, "120");
        UUID leg = production.leg("Shuttle", set, true);
        for (int i = 1; i <= 4; i++) {
            production.item("CARD-" + i, "CARD", set, null);
        }
        production.item("READER-1", "READER", set, null);
        production.item("READER-2", "READER", set, null);
        production.item("SHUTTLE-1", "DRIVE", set, leg);
    }

    String path(String page) {
        return production.path("turnaround" + page);
    }

    UUID save(ScenarioDrafts drafts, String name, Map<String, String> figures) {
        return drafts.save(production.as(Role.WRANGLER), name, day, figures);
    }
}
