package rollbook.production;

import java.util.UUID;

/** A shooting unit of a production: main, second… */
public record Unit(UUID id, String name) {}
