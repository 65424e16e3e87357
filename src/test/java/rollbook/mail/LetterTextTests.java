package rollbook.mail;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;

class LetterTextTests {
    private static final Letter LETTER = new Letter(
            "TIDE: Main day 3 wrapped",
            "Main day 3 is wrapped. 2 cards may be cleared or erased now; one is held until its second copy is proven.",
            List.of(
                    new Letter.Part(
                            "Held",
                            List.of(
                                    new Letter.Line(
                                            "CARD-014 (A027): 3 files differ on SHUTTLE-02, so the card is held until they are copied again.",
                                            "/p/TIDE/rolls/7"),
                                    new Letter.Line("and 4 more", "/p/TIDE/rolls"))),
                    new Letter.Part("Proof", List.of(new Letter.Line("12 of 14 copies are proven.", null)))));

    @Test
    void asPlainTextItAnswersFirstAndEachThingHasItsLink() {
        assertThat(LetterText.plain(LETTER)).isEqualTo("""
                Main day 3 is wrapped. 2 cards may be cleared or erased now; one is held
                until its second copy is proven.

                Held
                - CARD-014 (A027): 3 files differ on SHUTTLE-02, so the card is held until
                  they are copied again.
                  {portal}/p/TIDE/rolls/7
                - and 4 more
                  {portal}/p/TIDE/rolls

                Proof
                - 12 of 14 copies are proven.
                """);
    }

    @Test
    void asHtmlItSaysTheSame() {
        Document html = Jsoup.parse(LetterText.html(LETTER));
        assertThat(html.select("p").eachText()).containsExactly(LETTER.sentence());
        assertThat(html.select("h2").eachText()).containsExactly("Held", "Proof");
        assertThat(html.select("li").eachText())
                .containsExactlyElementsOf(LETTER.parts().stream()
                        .flatMap(part -> part.lines().stream())
                        .map(Letter.Line::text)
                        .toList());
        assertThat(html.select("a").eachAttr("href"))
                .containsExactly("{portal}/p/TIDE/rolls/7", "{portal}/p/TIDE/rolls");
    }

    @Test
    void whatSomebodyTypedStaysText() {
        Letter letter = new Letter(
                "",
                "<script>alert('1')</script> & \"more\"",
                List.of(new Letter.Part("<b>", List.of(new Letter.Line("<a href='x'>", "/p/X/rolls/\"><img src=x>")))));
        Document html = Jsoup.parse(LetterText.html(letter));
        assertThat(html.select("script, b, img")).isEmpty();
        assertThat(html.select("a")).hasSize(1);
        assertThat(html.select("p").text()).isEqualTo(letter.sentence());
    }

    @Test
    void aWordThatIsTooLongStaysWhole() {
        String word = "x".repeat(90);
        Letter letter = new Letter("", "An " + word + " end.", List.of());
        assertThat(LetterText.plain(letter)).isEqualTo("An\n" + word + "\nend.\n");
    }
}
