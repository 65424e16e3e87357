package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FoldedPathTests {

    @ParameterizedTest
    @CsvSource({
        "Clips/A014C003.MOV, clips/a014c003.mov",
        "Clips\\A014C003.mov, Clips/A014C003.mov",
        "STRASSE, straße",
        "ΣΑΣ, σας",
        "take 3?.wav, take 3_.wav",
        "take 3?.wav, take 3%3F.wav",
        "take 3?.wav, take 3%3f.wav",
        "10:15/a, 10_15/a",
        "a<b>|\"*c, a_b____c",
        "a%25b, a%b",
        "notes./b, notes/b",
        "notes./b, notes_/b",
        "'notes ', notes",
    })
    void areOneNameInOtherSpellings(String one, String other) {
        assertThat(FoldedPath.of(one)).isEqualTo(FoldedPath.of(other));
    }

    @ParameterizedTest
    @CsvSource({
        "a/b, a/c",
        "a/b, ab",
        "A014C003, A014C008",
        "a.mov, a.mxf",
        "take%41, takeA",
        "a%2, a_",
        "a.b, a_b",
        "a b, ab"
    })
    void areTwoNames(String one, String other) {
        assertThat(FoldedPath.of(one)).isNotEqualTo(FoldedPath.of(other));
    }
}
