package rollbook.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.junit.jupiter.api.Test;
import rollbook.quantity.ByteCount;
import rollbook.quantity.ByteUnit;
import rollbook.quantity.Fraction;

class PresetsTests {

    private static final PictureSize HD = new PictureSize(1920, 1080);

    @Test
    void everyPresetHasItsOwnKeyAndNamesItsStandard() {
        assertThat(Presets.all()).extracting(Preset::key).doesNotHaveDuplicates();
        assertThat(Presets.all()).extracting(preset -> preset.format().name()).doesNotHaveDuplicates();
        assertThat(Presets.all()).allSatisfy(preset -> {
            assertThat(preset.key()).matches("[a-z0-9.-]+");
            assertThat(preset.standard()).isNotBlank();
            assertThat(preset.format().minutesOn(ByteCount.of(1, ByteUnit.TB))).isGreaterThan(Fraction.ONE);
            assertThat(Presets.find(preset.key())).contains(preset);
        });
        assertThat(Presets.find("none")).isEmpty();
    }

    @Test
    void coversTheOpenStandards() {
        assertThat(Presets.all())
                .extracting(Preset::standard)
                .contains(
                        "SMPTE ST 2019-1",
                        "SMPTE RP 2027",
                        "SMPTE ST 356",
                        "SMPTE ST 314",
                        "SMPTE ST 370",
                        "SMPTE ST 268-1",
                        "OpenEXR file layout",
                        "DNG 1.6",
                        "SMPTE ST 2110-20",
                        "EBU Tech 3285");
        assertThat(Presets.audio()).extracting(Audio::channels).containsExactly(1, 2, 4, 8, 16);
    }

    @Test
    void vc3FramesGrowFromTheirBasisInStepsOf4096() {
        for (Vc3.AnyRaster line : Vc3.ANY_RASTERS) {
            assertThat(Vc3.frame(line.compressionId(), HD)).isEqualTo(line.basisFrame());
            ByteCount smallest = Vc3.frame(line.compressionId(), new PictureSize(16, 16));
            assertThat(smallest).isEqualTo(ByteCount.of(8192));
            for (int width = 256; width <= 8192; width += 208) {
                long bytes = Vc3.frame(line.compressionId(), new PictureSize(width, 1080))
                        .bytes();
                assertThat(bytes % 4096).isZero();
            }
        }
        assertThatIllegalArgumentException().isThrownBy(() -> Vc3.frame(1235, HD));
    }

    @Test
    void everyConnectionHasItsOwnKeyAndFasterGenerationsCarryMore() {
        assertThat(LinkCeiling.all()).extracting(LinkCeiling::key).doesNotHaveDuplicates();
        assertThat(LinkCeiling.find("pcie-4-x2").orElseThrow().payload())
                .isEqualTo(LinkCeiling.find("pcie-3-x4").orElseThrow().payload())
                .isGreaterThan(LinkCeiling.find("usb-3.2-gen-2x2").orElseThrow().payload());
        assertThat(LinkCeiling.find("none")).isEmpty();
    }
}
