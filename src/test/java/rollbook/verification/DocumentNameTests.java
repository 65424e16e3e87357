package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DocumentNameTests {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "card.md5|card.md5",
                "../../etc/x|x",
                "C:\\a\\b.md5|b.md5",
                "..|unnamed",
                "a/|unnamed",
                "'  '|unnamed",
                "été 01.md5|été 01.md5",
            })
    void onlyTheLastPartOfANameIsShown(String sent, String shown) {
        assertThat(DocumentName.shown(sent)).isEqualTo(shown);
    }

    @Test
    void whatMisleadsTheEyeIsLeftOutAndWrittenAsANumber() {
        assertThat(DocumentName.shown("a\u202Eb\u0000\nc\uD800")).isEqualTo("abc");
        assertThat(DocumentName.exact("a\u202Eb\u0000\nc\uD800")).isEqualTo("a\\u{202e}b\\u{0}\\u{a}c\\u{d800}");
    }

    @Test
    void aLongNameKeepsItsBeginningAndItsEnd() {
        String shown = DocumentName.shown("😀".repeat(300) + ".sha256");
        assertThat(shown.codePointCount(0, shown.length())).isEqualTo(201);
        assertThat(shown).startsWith("😀").endsWith("😀.sha256");
    }
}
