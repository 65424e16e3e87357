package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** ASC MHL 1.0, appendix C: the rules of a {@code .gitignore} line. */
class IgnorePatternsTests {

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            ignoreLeadingAndTrailingWhitespace = false,
            value = {
                "a.txt|a.txt|true",
                "a.txt|x/y/a.txt|true",
                "a.txt|A.txt|false",
                "a.txt|a.txt/b|true",
                "/a.txt|a.txt|true",
                "/a.txt|x/a.txt|false",
                "x/a|x/a|true",
                "x/a|y/x/a|false",
                "ascmhl/|ascmhl|false",
                "ascmhl/|ascmhl/0001.mhl|true",
                "ascmhl/|A001/ascmhl/0001.mhl|true",
                "a/b/|a/b/c|true",
                "a/b/|x/a/b/c|false",
                "*.tmp|x/a.tmp|true",
                "*.tmp|.tmp|true",
                "x/*|x/a|true",
                "x/*|x/a/b|true",
                "x/*.mov|x/a/b.mov|false",
                "a?c|abc|true",
                "a?c|a/c|false",
                "[a-c]1|b1|true",
                "[a-c]1|d1|false",
                "[!a-c]1|d1|true",
                "[^a-c]1|b1|false",
                "[]x]1|]1|true",
                "[a|[a|false",
                "a\\|a\\|false",
                "\\!a|!a|true",
                "a b  |a b|true",
                "a\\ |a |true",
                "#a|#a|true", // git would take this for a comment; appendix C has none
                "**/a|a|true",
                "**/a|x/y/a|true",
                "**/x/a|z/x/a|true",
                "x/**|x/y/z|true",
                "x/**|x|false",
                "a/**/b|a/b|true",
                "a/**/b|a/x/y/b|true",
                "a/**/b|a/x/y/c|false",
                "a**b|axyb|true",
                "*|x/y|true",
                "**|x/y|true",
            })
    void matchesAsALineOfGitDoes(String pattern, String path, boolean ignored) {
        assertThat(new IgnorePatterns(List.of(pattern)).ignoreFile(path)).isEqualTo(ignored);
    }

    @Test
    void theLastMatchingPatternDecidesButNotBelowAnIgnoredDirectory() {
        IgnorePatterns patterns = new IgnorePatterns(List.of("*.tmp", "!keep.tmp", "cache/", "!cache/keep.tmp"));

        assertThat(patterns.ignoreFile("a.tmp")).isTrue();
        assertThat(patterns.ignoreFile("x/keep.tmp")).isFalse();
        assertThat(patterns.ignoreFile("cache/keep.tmp")).isTrue();
    }

    /** The published pattern lists of the standard, 5.6.1.2. */
    @Test
    void theDefaultsLeaveOutWhatBelongsToNobody() {
        IgnorePatterns patterns = new IgnorePatterns(List.of(".DS_Store", "ascmhl", "ascmhl/"));

        assertThat(patterns.ignoreFile("Clips/.DS_Store")).isTrue();
        assertThat(patterns.ignoreFile("A001/ascmhl/ascmhl_chain.xml")).isTrue();
        assertThat(patterns.ignoreFile("Clips/A001C001.mxf")).isFalse();
    }

    @Test
    void decomposedPatternsMeetComposedPaths() {
        assertThat(new IgnorePatterns(List.of("cafe\u0301")).ignoreFile("caf\u00E9"))
                .isTrue();
    }

    /** A matcher that tries every way would not end within a lifetime. */
    @Test
    void manyStarsDoNotTakeForEver() {
        IgnorePatterns names = new IgnorePatterns(List.of("*a".repeat(40) + "b"));
        IgnorePatterns folders = new IgnorePatterns(List.of("**/a/".repeat(40) + "b"));

        Assertions.assertTimeoutPreemptively(Duration.ofSeconds(20), () -> {
            assertThat(names.ignoreFile("a".repeat(4_000))).isFalse();
            assertThat(folders.ignoreFile("a/".repeat(2_000) + "c")).isFalse();
        });
    }

    /** Against git itself, which the standard refers to. */
    @Test
    void agreesWithGitOnPatternsAtRandom(@TempDir Path folder) throws Exception {
        assumeTrue(hasGit(), "git is not installed");
        run(folder, List.of("git", "init", "-q"), "");
        long seed = 211;
        SplittableRandom random = new SplittableRandom(seed);
        for (int round = 0; round < 60; round++) {
            List<String> lines = draw(random, 4, true);
            List<String> paths = List.copyOf(Set.copyOf(draw(random, 60, false)));
            Files.writeString(folder.resolve(".gitignore"), String.join("\n", lines) + "\n");
            String ignored = run(
                    folder,
                    List.of("git", "check-ignore", "--no-index", "-z", "--stdin"),
                    String.join("\0", paths) + "\0");
            IgnorePatterns patterns = new IgnorePatterns(lines);
            assertThat(paths.stream().filter(patterns::ignoreFile))
                    .as("seed %d, round %d, patterns %s", seed, round, lines)
                    .containsExactlyInAnyOrderElementsOf(ignored.isEmpty() ? List.of() : List.of(ignored.split("\0")));
        }
    }

    @Test
    void noPatternIsAFault() {
        SplittableRandom random = new SplittableRandom(212);
        for (int i = 0; i < 2_000; i++) {
            StringBuilder line = new StringBuilder();
            for (int length = random.nextInt(12); length > 0; length--) {
                line.append("[]!^-\\*?/ a#".charAt(random.nextInt(12)));
            }
            assertThatCode(() -> new IgnorePatterns(List.of(line.toString())).ignoreFile("a/b-]/^["))
                    .as(line.toString())
                    .doesNotThrowAnyException();
        }
    }

    private static List<String> draw(SplittableRandom random, int count, boolean patterns) {
        String[] names = {"a", "b", "ab", "abc", "c.mov", "x y"};
        String[] globs = {"*", "?", "a*", "*b", "[ab]", "[!a]", "**", "a?c", "*.mov", "\\a", "a**c"};
        List<String> drawn = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            StringBuilder path = new StringBuilder(patterns && random.nextInt(5) == 0 ? "!" : "");
            path.append(patterns && random.nextInt(4) == 0 ? "/" : "");
            int depth = 1 + random.nextInt(patterns ? 3 : 4);
            for (int d = 0; d < depth; d++) {
                boolean glob = patterns && random.nextInt(2) == 0;
                path.append(d == 0 ? "" : "/");
                path.append(glob ? globs[random.nextInt(globs.length)] : names[random.nextInt(names.length)]);
            }
            path.append(patterns && random.nextInt(4) == 0 ? "/" : "");
            drawn.add(path.toString());
        }
        return drawn;
    }

    private static boolean hasGit() throws InterruptedException {
        try {
            return new ProcessBuilder("git", "--version").start().waitFor() == 0;
        } catch (IOException missing) {
            return false;
        }
    }

    private static String run(Path folder, List<String> command, String input) throws Exception {
        Process process = new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        try (var in = process.getOutputStream()) {
            in.write(input.getBytes(StandardCharsets.UTF_8));
        }
        String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        process.waitFor();
        return output;
    }
}
