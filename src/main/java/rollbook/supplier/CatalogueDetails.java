package rollbook.supplier;

import org.jspecify.annotations.Nullable;
import rollbook.production.MediaKind;

/**
 * What is offered. Figures are null where nobody knows them or the kind has none.
 *
 * @param packSize items that are sold together, at least one
 */
public record CatalogueDetails(
        MediaKind kind,
        String model,
        @Nullable Long capacityBytes,
        @Nullable Long readBytesPerSecond,
        @Nullable Long writeBytesPerSecond,
        int packSize) {}
