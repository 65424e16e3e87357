package rollbook.offload;

import java.util.UUID;

/** What encoding made of a roll: its bytes as encoded, for its bytes as recorded. */
public record Encoding(UUID rollId, long encodedBytes, long recordedBytes) {
    public Encoding {
        if (encodedBytes <= 0 || recordedBytes <= 0) {
            throw new IllegalArgumentException(
                    "%d bytes encoded, %d recorded: neither may be nothing".formatted(encodedBytes, recordedBytes));
        }
    }
}
