package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RollSurveyTests {
    private static final List<String> ROLLS = List.of("A014", "B007", "A1", "A001", "A003");

    @ParameterizedTest
    @ValueSource(
            strings = {
                "A014",
                "a014",
                "A014_R2EC",
                "A014-copy 2",
                "2026-03-04/A014_CU01",
                "drive/day 3/A014.card",
            })
    void aFolderCalledByARollHoldsIt(String folder) {
        RollSplit split = split("day.md5", null, folder + "/Clips/A014C001_260304.mxf", folder + "/report.txt");

        assertThat(split.parts()).containsExactly(new RollPart(folder, "A014", false, 2, 20));
        assertThat(split.place(folder + "/Clips/A014C001_260304.mxf"))
                .isEqualTo(new RollSplit.Place(folder, "Clips/A014C001_260304.mxf"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"A0145", "XA014", "A014B", "A01"})
    void aFolderCalledOtherwiseDoesNot(String folder) {
        assertThat(split("day.md5", null, folder + "/x").parts()).containsExactly(new RollPart("", null, false, 1, 10));
    }

    @Test
    void dividesADriveOverItsRolls() {
        RollSplit split = split("day.md5", null, "A014/x", "B007_1/x", "A014/y", "B007_1/sub/z");

        assertThat(split.parts())
                .containsExactly(
                        new RollPart("A014", "A014", false, 2, 20), new RollPart("B007_1", "B007", false, 2, 20));
    }

    @Test
    void anExactNameCountsBeforeAPrefix() {
        RollSplit split = split("day.md5", null, "A001_to_A010/A003/Clips/x");

        assertThat(split.parts()).containsExactly(new RollPart("A001_to_A010/A003", "A003", false, 1, 10));
        assertThat(split("day.md5", null, "A014/B007_compared/x").parts())
                .containsExactly(new RollPart("A014", "A014", false, 1, 10));
    }

    @Test
    void ofSeveralRollsTheInnermostCountsAndOfItsFoldersTheOutermost() {
        RollSplit split = split("day.md5", null, "A001_first/A003_CU/A003_proxy/x");

        assertThat(split.parts()).containsExactly(new RollPart("A001_first/A003_CU", "A003", false, 1, 10));
    }

    @Test
    void theLongestCodeCounts() {
        List<String> rolls = List.of("A1", "A1_2");
        RollSurvey survey = new RollSurvey(rolls, "day.md5", null);
        survey.add(entry("A1_2_x/a"));

        assertThat(survey.split().parts()).extracting(RollPart::rollCode).containsExactly("A1_2");
    }

    @Test
    void guessesFromTheNamesOfClips() {
        RollSplit split = split("list.md5", null, "Clips/A014C001_260304.mxf", "Audio/x.wav", "report.txt");

        assertThat(split.parts()).containsExactly(new RollPart("", "A014", true, 3, 30));
        assertThat(split.place("Audio/x.wav")).isEqualTo(new RollSplit.Place("", "Audio/x.wav"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"A014.md5", "day 3 - a014.txt", "SHUTTLE_A014_full.xxh64"})
    void guessesFromTheNameOfTheDocument(String name) {
        assertThat(split(name, null, "Clips/x.mxf").parts()).containsExactly(new RollPart("", "A014", true, 1, 10));
    }

    @Test
    void doesNotGuessWhatIsAmbiguous() {
        assertThat(split("A014_B007.md5", null, "Clips/x.mxf").parts())
                .containsExactly(new RollPart("", null, false, 1, 10));
        assertThat(split("day.md5", null, "Clips/Z999C001.mxf").parts())
                .as("a roll that the production does not have")
                .containsExactly(new RollPart("", null, false, 1, 10));
    }

    @Test
    void theCoveredFolderOfAHashListNamesItsRoll() {
        RollSplit split = split("0001_A014_CU01_2026-03-04_180512Z.mhl", "A014_CU01", "Clips/x", "A014_proxy/y", "z");

        assertThat(split.parts()).containsExactly(new RollPart("", "A014", true, 3, 30));
    }

    @Test
    void clipsOfAnotherRollContradictTheCoveredFolder() {
        assertThat(split("a.mhl", "A014", "Clips/B007C001.mxf").parts())
                .containsExactly(new RollPart("Clips", "B007", true, 1, 10));
    }

    @Test
    void topFoldersOfUnknownRollsStayApart() {
        RollSplit split = split("day.md5", null, "MAG1/x", "MAG2/x", "MAG1/y/z");

        assertThat(split.parts())
                .containsExactly(new RollPart("MAG1", null, false, 2, 20), new RollPart("MAG2", null, false, 1, 10));
        assertThat(split.place("MAG1/y/z")).isEqualTo(new RollSplit.Place("MAG1", "y/z"));
    }

    @Test
    void topFoldersWithClipsOfDifferentRollsAreGuessedOneByOne() {
        RollSplit split = split("day.md5", null, "M1/A014C001.mxf", "M2/B007C001.mxf", "M3/x", "y");

        assertThat(split.parts())
                .containsExactly(
                        new RollPart("M1", "A014", true, 1, 10),
                        new RollPart("M2", "B007", true, 1, 10),
                        new RollPart("M3", null, false, 1, 10),
                        new RollPart("", null, false, 1, 10));
    }

    @Test
    void whatLiesBesideKnownRollsIsNotDropped() {
        RollSplit split = split("A014.md5", null, "A014/x", "SOUND/t", "STILLS/s", "notes.txt");

        assertThat(split.parts())
                .containsExactly(
                        new RollPart("A014", "A014", false, 1, 10),
                        new RollPart("SOUND", null, false, 1, 10),
                        new RollPart("STILLS", null, false, 1, 10),
                        new RollPart("", null, false, 1, 10));
    }

    @Test
    void withoutKnownRollsADocumentIsOnePart() {
        RollSurvey survey = new RollSurvey(List.of(), "A014.md5", null);
        survey.add(entry("A014/x"));

        assertThat(survey.split().parts()).containsExactly(new RollPart("", null, false, 1, 10));
    }

    /** Every file has one place, in a part that counts it, and folder and path give the listed path again. */
    @Test
    void everyFileHasItsPlace() {
        long seed = 1_204;
        SplittableRandom random = new SplittableRandom(seed);
        String[] names = {"A014", "a014_x", "B007", "Clips", "MAG1", "A014C001.mxf", "B007C002.mxf", "x", "A1"};
        for (int i = 0; i < 2_000; i++) {
            String[] paths = new String[1 + random.nextInt(8)];
            for (int p = 0; p < paths.length; p++) {
                StringBuilder path = new StringBuilder(names[random.nextInt(names.length)]);
                for (int depth = random.nextInt(4); depth > 0; depth--) {
                    path.append('/').append(names[random.nextInt(names.length)]);
                }
                paths[p] = path.toString();
            }
            String rootFolder = random.nextInt(3) == 0 ? "A014_CU" : null;
            RollSplit split = split("list.md5", rootFolder, paths);
            for (String path : paths) {
                RollSplit.Place place = split.place(path);
                String again = place.folder().isEmpty() ? place.path() : place.folder() + "/" + place.path();
                assertThat(again).as("seed %d, case %d", seed, i).isEqualTo(path);
                assertThat(split.parts()).extracting(RollPart::folder).contains(place.folder());
            }
            assertThat(split.parts().stream().mapToLong(RollPart::files).sum())
                    .as("seed %d, case %d", seed, i)
                    .isEqualTo(paths.length);
            assertThat(split.parts()).extracting(RollPart::folder).doesNotHaveDuplicates();
        }
    }

    private static RollSplit split(String documentName, @Nullable String rootFolder, String... paths) {
        RollSurvey survey = new RollSurvey(ROLLS, documentName, rootFolder);
        for (String path : paths) {
            survey.add(entry(path));
        }
        return survey.split();
    }

    private static ManifestEntry entry(String path) {
        return Manifests.file(path, 10L);
    }
}
