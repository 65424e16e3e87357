package rollbook.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class TextFaceTests {
    private final TextFace face = new TextFace();

    /** From the font file's table hmtx, read by a script of its own: digits 1172, space 585, "#" 1544 of 2048. */
    @Test
    void widthsAreThoseOfTheFace() {
        assertThat(face.width("0123456789")).isCloseTo(10 * 1172 / 2048.0, within(1e-4));
        assertThat(face.width(" ")).isCloseTo(585 / 2048.0, within(1e-4));
        assertThat(face.width("\u4e2d")).as("it has no Chinese letters").isCloseTo(1544 / 2048.0, within(1e-4));
    }

    @Test
    void textIsBrokenBetweenWordsAndShortenedAtItsEnd() {
        double width = face.width("shuttle drive");
        assertThat(face.lines("shuttle drive", width, 1)).containsExactly("shuttle drive");
        assertThat(face.lines("shuttle drive of steel", width, 2)).containsExactly("shuttle drive", "of steel");
        assertThat(face.lines("shuttle drive of steel", width, 1))
                .singleElement()
                .asString()
                .startsWith("shuttle d")
                .endsWith("…");
        assertThat(face.lines("  ", width, 2)).isEmpty();
    }

    @Test
    void noLineIsWiderThanItsRoomAndNothingIsLostButTheEnd() {
        long seed = new Random().nextLong();
        Random random = new Random(seed);
        for (int trial = 0; trial < 500; trial++) {
            StringBuilder text = new StringBuilder();
            for (int i = random.nextInt(60); i >= 0; i--) {
                text.appendCodePoint(
                        switch (random.nextInt(6)) {
                            case 0 -> ' ';
                            case 1 -> 0x1F3AC;
                            case 2 -> 'Ø';
                            default -> 'a' + random.nextInt(26);
                        });
            }
            String typed = text.toString().strip().replaceAll(" +", " ");
            double width = 2 + random.nextInt(20);
            int most = 1 + random.nextInt(3);
            var lines = face.lines(typed, width, most);
            assertThat(lines)
                    .as("seed %d, trial %d: %s", seed, trial, typed)
                    .hasSizeLessThanOrEqualTo(most)
                    .allSatisfy(line -> assertThat(face.width(line)).isLessThanOrEqualTo(width + 1e-9));
            String joined = String.join("", lines).replace(" ", "");
            String all = typed.replace(" ", "");
            assertThat(joined.endsWith("…") ? joined.substring(0, joined.length() - 1) : joined)
                    .as("seed %d, trial %d: %s", seed, trial, typed)
                    .matches(shown -> joined.endsWith("…") ? all.startsWith(shown) : all.equals(shown));
        }
    }
}
