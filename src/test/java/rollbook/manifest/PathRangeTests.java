package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

class PathRangeTests {
    private static final String[] PIECES = {
        "A014C003", "_", ".", "/", "0", "7", "00012", "1043", "999", "C001", "dpx", "mxf", "é", "\n", "12345678901", " "
    };

    @Test
    void framesThatFollowEachOtherBecomeRanges() {
        List<String> paths = new ArrayList<>();
        for (int frame = 1_043; frame <= 1_187; frame++) {
            paths.add("A014C003/A014C003.%07d.dpx".formatted(frame));
        }
        paths.add("A014C003/A014C003.0000012.dpx");
        paths.add("A014C003.mxf");

        List<PathRange> folded = PathRange.fold(paths);

        assertThat(folded)
                .containsExactly(
                        new PathRange(
                                "A014C003",
                                "A014C003/A014C003.",
                                7,
                                ".dpx",
                                List.of(new NumberRange(12, 12), new NumberRange(1_043, 1_187))),
                        new PathRange("A014C003", "A014C003.mxf", 0, "", List.of(new NumberRange(0, 0))));
        assertThat(folded.get(0).numbersText()).isEqualTo("12, 1043–1187");
        assertThat(folded.get(0).pattern()).isEqualTo("A014C003/A014C003.#######.dpx");
        assertThat(folded.get(0).files()).isEqualTo(146);
    }

    /** Property: unfolding what was folded gives the same paths, whatever they look like. */
    @Test
    void unfoldingGivesBackThePaths() {
        for (int round = 0; round < 2_000; round++) {
            long seed = System.nanoTime();
            Random random = new Random(seed);
            Set<String> paths = new HashSet<>();
            for (int i = random.nextInt(40); i >= 0; i--) {
                StringBuilder path = new StringBuilder();
                for (int piece = 1 + random.nextInt(6); piece > 0; piece--) {
                    path.append(PIECES[random.nextInt(PIECES.length)]);
                }
                paths.add(path.toString());
            }
            List<String> unfolded = new ArrayList<>();
            long files = 0;
            for (PathRange range : PathRange.fold(paths)) {
                unfolded.addAll(range.paths());
                files += range.files();
            }
            assertThat(unfolded).as("seed %d", seed).containsExactlyInAnyOrderElementsOf(paths);
            assertThat(files).as("seed %d", seed).isEqualTo(paths.size());
        }
    }
}
