package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;

import com.github.luben.zstd.Zstd;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import rollbook.verification.ChunkPacking.Codec;
import rollbook.verification.ChunkPacking.Packed;

class ChunkPackingTests {
    private static final int[] RUNS = {1, 2, 15, 16, 17, 31, 32, 33, 40, 63, 64, 65, 127, 128, 129, 500};
    private static final String[] DIGITS = {"0123456789", "0123456789abcdef", "0123456789ABCDEF", "0123456789abcdefA"};

    private final ChunkPacking packing = new ChunkPacking();

    /** Digests of every length and case, runs that are none, bytes that stand for digests, and anything else. */
    @Test
    void givesTheVeryBytesBack() {
        for (long seed = 1; seed <= 2_000; seed++) {
            byte[] chunk = hostileBytes(new SplittableRandom(seed));

            Packed packed = packing.pack(chunk);

            assertThat(ChunkPacking.unpack(packed.codec(), packed.content(), chunk.length))
                    .as("seed %d", seed)
                    .isEqualTo(chunk);
        }
    }

    @Test
    void aDigestTakesItsBytes() {
        SplittableRandom random = new SplittableRandom(1);
        StringBuilder list = new StringBuilder();
        for (int i = 0; i < 10_000; i++) {
            list.append("%016x%016x".formatted(random.nextLong(), random.nextLong()))
                    .append("  A014/A014C001.%07d.dng\n".formatted(i));
        }
        byte[] chunk = list.toString().getBytes(StandardCharsets.UTF_8);

        Packed packed = packing.pack(chunk);

        assertThat(packed.codec()).isEqualTo(Codec.DIGESTS_APART);
        assertThat(packed.content().length / 10_000.0).isBetween(16.0, 18.0);
    }

    @Test
    void whatHoldsNoDigestIsOneFrame() {
        byte[] chunk = "no digest here: 0123456789abcdef0".getBytes(StandardCharsets.UTF_8);

        Packed packed = packing.pack(chunk);

        assertThat(packed.codec()).isEqualTo(Codec.ZSTD);
        assertThat(Zstd.decompress(packed.content(), chunk.length)).isEqualTo(chunk);
    }

    private static byte[] hostileBytes(SplittableRandom random) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        for (int piece = random.nextInt(40); piece > 0; piece--) {
            switch (random.nextInt(4)) {
                case 0 -> bytes.write(random.nextInt(256));
                case 1 -> bytes.write(0xF5 + random.nextInt(11));
                default -> {
                    String digits = DIGITS[random.nextInt(DIGITS.length)];
                    for (int i = RUNS[random.nextInt(RUNS.length)]; i > 0; i--) {
                        bytes.write(digits.charAt(random.nextInt(digits.length())));
                    }
                    if (random.nextBoolean()) {
                        bytes.write(' ');
                    }
                }
            }
        }
        return bytes.toByteArray();
    }
}
