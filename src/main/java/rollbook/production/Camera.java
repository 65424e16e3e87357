package rollbook.production;

import java.util.UUID;

/** A camera of a unit, known by its letter, which is unique in the production. */
public record Camera(UUID id, UUID unitId, String unitName, String letter) {}
