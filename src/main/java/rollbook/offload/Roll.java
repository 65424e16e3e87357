package rollbook.offload;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.inventory.CardState;

/**
 * What one camera recorded on one card between loading and pulling it.
 *
 * @param minutes recorded minutes; null while the card is in the camera
 * @param sizeBytes bytes as recorded: from the offload, or from a manifest of the card itself; null until one tells
 * @param cardState where the card stands now; it speaks of this roll only while the card still holds it
 * @param onCard whether the card still holds this roll
 */
public record Roll(
        UUID id,
        String code,
        UUID cameraId,
        String cameraLetter,
        UUID unitId,
        String unitName,
        UUID dayId,
        int dayNumber,
        LocalDate dayDate,
        UUID cardId,
        String cardCode,
        @Nullable Long cardCapacityBytes,
        CardState cardState,
        boolean onCard,
        UUID formatId,
        Instant loadedAt,
        @Nullable Instant pulledAt,
        @Nullable BigDecimal minutes,
        @Nullable Long sizeBytes,
        String note,
        int version) {}
