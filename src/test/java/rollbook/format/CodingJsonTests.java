package rollbook.format;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.EnumSet;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rollbook.quantity.Fraction;
import rollbook.recording.Coding;
import rollbook.recording.FrameRate;
import rollbook.recording.Packing;
import rollbook.recording.Preset;
import rollbook.recording.Presets;
import rollbook.recording.Sampling;

class CodingJsonTests {
    private static final long SEED = 20261125;

    @Test
    void everyCodingComesBackAsItWas() {
        var random = new SplittableRandom(SEED);
        Set<CodingKind> seen = EnumSet.noneOf(CodingKind.class);
        for (int i = 0; i < 2_000; i++) {
            Coding coding = coding(random, CodingKind.values()[random.nextInt(CodingKind.values().length)]);
            seen.add(CodingKind.of(coding));
            assertThat(CodingJson.read(CodingKind.of(coding), CodingJson.write(coding)))
                    .as("seed %d, case %d", SEED, i)
                    .isEqualTo(coding);
        }
        assertThat(seen).containsExactly(CodingKind.values());
    }

    @Test
    void everyPresetComesBackAsItWas() {
        for (Preset preset : Presets.all()) {
            Coding coding = preset.format().coding();
            assertThat(CodingJson.read(CodingKind.of(coding), CodingJson.write(coding)))
                    .as(preset.key())
                    .isEqualTo(coding);
        }
    }

    @Test
    void theSpellingOfStoredValuesStays() {
        assertThat(CodingJson.write(new Coding.FixedFrameBytes(917_504))).isEqualTo("{\"bytesPerFrame\":917504}");
        assertThat(CodingJson.write(new Coding.TargetBitRate(200_000_000, FrameRate.of(24_000, 1001))))
                .isEqualTo("{\"bitsPerSecond\":200000000,\"referenceFrameRate\":\"24000/1001\"}");
        assertThat(CodingJson.write(
                        new Coding.CompressionRatio(new Coding.Bayer(12, Packing.PACKED), Fraction.of(7, 2))))
                .isEqualTo("{\"ratio\":\"7/2\",\"bitsPerPhotosite\":12,\"packing\":\"PACKED\"}");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "FIXED_FRAME | {}",
                "FIXED_FRAME | {\"bytesPerFrame\": 1.5}",
                "FIXED_FRAME | {\"bytesPerFrame\": 0}",
                "BAYER | {\"bitsPerPhotosite\": 12, \"packing\": \"LOOSE\"}",
                "COMPRESSED_BAYER | {\"ratio\": \"3\", \"bytesPerFrame\": 1}",
            })
    void valuesOfNoCodingAreRefused(CodingKind kind, String json) {
        assertThatThrownBy(() -> CodingJson.read(kind, json)).isInstanceOf(IllegalArgumentException.class);
    }

    private static Coding coding(SplittableRandom random, CodingKind kind) {
        return switch (kind) {
            case BAYER -> bayer(random);
            case COMPONENTS -> components(random);
            case FIXED_FRAME -> new Coding.FixedFrameBytes(random.nextLong(1, 1_000_000_000_000L));
            case TARGET_BIT_RATE ->
                new Coding.TargetBitRate(
                        random.nextLong(1, 1_000_000_000_000_000L),
                        FrameRate.of(random.nextLong(1, 100_000), random.nextBoolean() ? 1 : 1001));
            case COMPRESSED_BAYER -> new Coding.CompressionRatio(bayer(random), ratio(random));
            case COMPRESSED_COMPONENTS -> new Coding.CompressionRatio(components(random), ratio(random));
            case SOUND_ONLY -> new Coding.SoundOnly();
        };
    }

    private static Fraction ratio(SplittableRandom random) {
        return Fraction.of(random.nextLong(1_000, 100_000), 1_000);
    }

    private static Coding.Bayer bayer(SplittableRandom random) {
        return new Coding.Bayer(random.nextInt(1, 33), packing(random));
    }

    private static Coding.Components components(SplittableRandom random) {
        Sampling sampling = Sampling.values()[random.nextInt(Sampling.values().length)];
        return new Coding.Components(sampling, random.nextInt(1, 33), packing(random));
    }

    private static Packing packing(SplittableRandom random) {
        return random.nextBoolean() ? Packing.PACKED : Packing.PADDED;
    }
}
