package rollbook.scenario;

import java.time.Instant;
import java.util.UUID;

/**
 * A day under assumptions, kept under a name.
 *
 * @param version for noticing that somebody else changed it meanwhile
 */
record Scenario(
        UUID id, String name, ScenarioInputs inputs, Instant savedAt, String savedBy, boolean archived, int version) {}
