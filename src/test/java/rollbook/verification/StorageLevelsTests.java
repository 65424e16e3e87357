package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rollbook.verification.IntegrityLevels.Practice;
import rollbook.verification.StorageLevels.Kept;

class StorageLevelsTests {
    /**
     * Cases by kind of medium and place; "home" is the set or the office, another place may have its threat after a slash,
     * and a bang marks a copy that isn't verified. The rules are those of US-CERT, "Data Backup Options" (2012): three
     * copies, two kinds of media, one off-site; and of the NDSA Levels of Digital Preservation, version 2.0, storage, as
     * quoted in repositories. Their readings case by case, R-01 to R-14, are this project's own.
     */
    @ParameterizedTest(name = "{0}: {1} is 3-2-1 {2}, NDSA v2 storage level {3}")
    @CsvSource({
        "R-01, card home, false, 0",
        "R-02, SSD home | SSD home, false, 0",
        "R-03, SSD home | HDD b, false, 1",
        "R-04, SSD home | HDD home | HDD home, false, 0",
        "R-05, HDD home | HDD home | HDD b, false, 2",
        "R-06, SSD home/flood | HDD home/flood | HDD b/flood, true, 2",
        "R-07, SSD home/fire | HDD home/fire | tape b/flood, true, 3",
        "R-08, SSD home/fire | tape b/flood | tape c/quake, true, 4",
        "R-09, RAID-6 home, false, 0",
        "R-10, SSD home | HDD home! | tape b, false, 1",
        "R-11, card home | SSD home | HDD b, false, 1",
        "R-12 (threats unknown), card home | SSD home | HDD home | tape b, true, 2",
        "R-12 (other threat), SSD home/fire | HDD home/fire | tape b/flood, true, 3",
        "R-13 (two drives in one case), HDD home | HDD home | tape b, true, 2",
        "R-14, cloud b | HDD home | HDD home, true, 2",
        "R-14 (other threat), cloud b/flood | HDD home/fire | HDD home/fire, true, 3"
    })
    void publishedRulesGiveTheseLevels(String id, String copies, boolean threeTwoOne, int level) {
        List<Kept> kept = Arrays.stream(copies.split(" \\| "))
                .map(StorageLevelsTests::kept)
                .toList();
        assertThat(StorageLevels.isThreeTwoOne(kept)).as("3-2-1").isEqualTo(threeTwoOne);
        assertThat(StorageLevels.of(kept).reached()).as("NDSA").isEqualTo(level);
    }

    @Test
    void whatIsMissingForTheNextLevelIsSaid() {
        assertThat(StorageLevels.of(List.of(kept("SSD home"))).missing())
                .extracting(SafetyLevel.Missing::key)
                .containsExactly("verification.level.storage.copies", "verification.level.storage.another-place");
        assertThat(StorageLevels.of(List.of(kept("HDD home"), kept("HDD home"), kept("HDD b")))
                        .missing())
                .extracting(SafetyLevel.Missing::key)
                .containsExactly(
                        "verification.level.storage.another-kind", "verification.level.storage.another-threat");
        assertThat(StorageLevels.of(List.of(kept("SSD home/fire"), kept("tape b/flood"), kept("tape c/quake")))
                        .missing())
                .isEmpty();
    }

    @Test
    void twoCopiesOnOneMediumAreOne() {
        Kept one = kept("HDD b");
        Kept same = new Kept(one.itemId(), "HDD", one.placeId(), true, "", true, false);
        assertThat(StorageLevels.of(List.of(one, same, kept("HDD home"))).reached())
                .isEqualTo(1);
    }

    @Test
    void placesThatAreNotOffSiteAreOnePlace() {
        Kept set = new Kept(UUID.randomUUID(), "HDD", UUID.randomUUID(), false, "", true, false);
        Kept office = new Kept(UUID.randomUUID(), "HDD", UUID.randomUUID(), false, "", true, false);
        assertThat(StorageLevels.of(List.of(set, office)).reached()).isZero();
    }

    @Test
    void aThreatThatNobodyNamedIsNoOtherThreat() {
        assertThat(StorageLevels.of(List.of(kept("SSD home/fire"), kept("HDD home/fire"), kept("tape b")))
                        .reached())
                .isEqualTo(2);
        assertThat(StorageLevels.of(List.of(kept("SSD home/Fire"), kept("HDD home/fire"), kept("tape b/ FIRE ")))
                        .reached())
                .isEqualTo(2);
    }

    @Test
    void anotherCopyNeverLowersTheLevelAndTheOrderDoesNotMatter() {
        long seed = new SplittableRandom().nextLong();
        SplittableRandom random = new SplittableRandom(seed);
        for (int round = 0; round < 5_000; round++) {
            List<Kept> copies = new ArrayList<>();
            for (int i = random.nextInt(6); i > 0; i--) {
                copies.add(any(random));
            }
            int level = StorageLevels.of(copies).reached();
            boolean threeTwoOne = StorageLevels.isThreeTwoOne(copies);
            Collections.shuffle(copies, new Random(random.nextLong()));
            assertThat(StorageLevels.of(copies).reached())
                    .as("seed %d, round %d", seed, round)
                    .isEqualTo(level);
            copies.add(any(random));
            assertThat(StorageLevels.of(copies).reached())
                    .as("seed %d, round %d", seed, round)
                    .isGreaterThanOrEqualTo(level);
            assertThat(!threeTwoOne || StorageLevels.isThreeTwoOne(copies))
                    .as("seed %d, round %d", seed, round)
                    .isTrue();
        }
    }

    /** NDSA Levels of Digital Preservation, version 2.0, integrity, as quoted in repositories. */
    @ParameterizedTest(name = "what is done {0}: integrity level {1}")
    @CsvSource({
        "-------, 0",
        "c------, 0",
        "-vkwier, 0",
        "cv-----, 1",
        "cvk----, 1",
        "cv-w---, 1",
        "cvkw---, 2",
        "cvkw-er, 2",
        "cvkwi--, 3",
        "cvkwie-, 3",
        "cvkwi-r, 3",
        "cvkwier, 4"
    })
    void integrityClimbsOneLevelAtATime(String done, int level) {
        Practice practice = new Practice(
                done.contains("c"),
                done.contains("v"),
                done.contains("k"),
                done.contains("w"),
                done.contains("i"),
                done.contains("e"),
                done.contains("r"));
        assertThat(IntegrityLevels.of(practice).reached()).isEqualTo(level);
        assertThat(IntegrityLevels.of(practice).missing().isEmpty()).isEqualTo(level == 4);
    }

    private static Kept kept(String words) {
        boolean verified = !words.endsWith("!");
        String[] kindAndPlace = words.replace("!", "").split(" ", 2);
        String[] placeAndThreat = kindAndPlace[1].split("/");
        String place = placeAndThreat[0];
        return new Kept(
                UUID.randomUUID(),
                kindAndPlace[0],
                UUID.nameUUIDFromBytes(place.getBytes(StandardCharsets.UTF_8)),
                !place.equals("home"),
                placeAndThreat.length > 1 ? placeAndThreat[1] : "",
                verified,
                kindAndPlace[0].equals("card"));
    }

    private static Kept any(SplittableRandom random) {
        int place = random.nextInt(4);
        // A place has one threat, but what isn't off-site may be several places.
        String[] threats = {"", "fire", "flood", "quake"};
        String threat = place < 2 ? threats[random.nextInt(4)] : threats[place];
        return new Kept(
                new UUID(1, random.nextInt(8)),
                List.of("HDD", "tape").get(random.nextInt(2)),
                new UUID(2, place),
                place >= 2,
                threat,
                random.nextInt(5) > 0,
                random.nextInt(8) == 0);
    }
}
