package rollbook.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class PitTests {

    @Test
    void aFigureLiesWhereItsRankAmongTheReplicatesIs() {
        double[] replicates = {4, 1, 3, 2};

        assertThat(Pit.place(replicates, 0.5, 0)).isZero();
        assertThat(Pit.place(replicates, 2.5, 0.5)).isEqualTo(0.5);
        assertThat(Pit.place(replicates, 9, 1)).isEqualTo(1);
    }

    @Test
    void aFigureThatReplicatesRepeatIsSpreadOverThem() {
        double[] replicates = {0, 0, 0, 5};

        assertThat(Pit.place(replicates, 0, 0)).isZero();
        assertThat(Pit.place(replicates, 0, 1)).isEqualTo(0.8);
    }

    /** Chi-square of nine degrees of freedom: 16.92 at 5 %, 27.88 at 0.1 % (printed tables). */
    @Test
    void unevenPlacesAreAsUnlikelyAsTheTableSays() {
        assertThat(Pit.chanceIfUniform(places(10, 0))).isCloseTo(1, within(1e-12));
        // A hundred a tenth: d more in one and d less in another is a chi-square of d² / 50.
        assertThat(Pit.chanceIfUniform(places(100, 29))).isBetween(0.05, 0.055);
        assertThat(Pit.chanceIfUniform(places(100, 38))).isBetween(0.0006, 0.001);
    }

    @Test
    void hitsAreCountedAndJudged() {
        assertThat(new Coverage(320, 400).share()).isEqualTo(0.8);
        assertThat(new Coverage(304, 400).agreesWith(0.8, 0.05)).isTrue();
        assertThat(new Coverage(303, 400).agreesWith(0.8, 0.05)).isFalse();
        assertThat(new Coverage(336, 400).agreesWith(0.8, 0.05)).isFalse();
    }

    @Test
    void anErrorInLogsIsAPartAboveOrBelow() {
        assertThat(Scores.logError(100, 110)).isCloseTo(0.0953, within(1e-4));
        assertThat(Scores.logError(100, 100 / 1.1)).isCloseTo(-0.0953, within(1e-4));
    }

    private static List<Double> places(int inEachTenth, int moved) {
        List<Double> places = new ArrayList<>();
        for (int tenth = 0; tenth < 10; tenth++) {
            int count = inEachTenth + (tenth == 0 ? moved : tenth == 9 ? -moved : 0);
            double place = tenth / 10.0 + 0.05;
            IntStream.range(0, count).forEach(i -> places.add(place));
        }
        return places;
    }
}
