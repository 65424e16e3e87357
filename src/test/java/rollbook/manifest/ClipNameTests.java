package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Clips are called by their roll, C and a number: common practice, no source. */
class ClipNameTests {

    @ParameterizedTest
    @CsvSource({
        "A014C003.mxf, A014C003",
        "A014C003_260301_R1AB.mxf, A014C003",
        "A014_C003_260301.mov, A014C003",
        "a014c003.mov, A014C003",
        "proxy_A014C003.0000123.dpx, A014C003",
        "AB12C00123x, AB12C00123",
        "A001C001_B002C007.mov, B002C007",
        "M2A014C003.x, M2A014C003"
    })
    void findsTheClip(String name, String clip) {
        assertThat(ClipName.in(name)).extracting(ClipName::text).isEqualTo(clip);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "C003",
                "A14C03.mxf",
                "014C003.mxf",
                "AC003.mxf",
                "A014C123456.mxf",
                "A014-003.mxf",
                "C",
                "1C001"
            })
    void otherNamesAreNoClip(String name) {
        assertThat(ClipName.in(name)).isNull();
    }

    @ParameterizedTest
    @ValueSource(strings = {"C", "0", "A0C001", "A000C", "C0011"})
    void anEndlessNameTakesNoTime(String piece) {
        ClipName clip = ClipName.in(piece.repeat(200_000));
        assertThat(clip == null || clip.roll().length() <= 32).isTrue();
    }
}
