package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static rollbook.manifest.ChecksumAlgorithm.C4;
import static rollbook.manifest.ChecksumAlgorithm.MD5;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import rollbook.manifest.HistoryProblem.Kind;
import rollbook.manifest.ManifestEntry.Action;
import rollbook.manifest.ManifestHeader.Process;
import rollbook.manifest.MhlGeneration.State;

/** Section numbers are those of the ASC MHL specification 1.0. */
class MhlHistoriesTests {
    private static final String CHAIN = "ascmhl/" + MhlChain.FILE_NAME;

    private final Map<String, byte[]> files = new TreeMap<>();

    /** 7.4: the C4 IDs in the worked example's chain are those of its hash lists. */
    @Test
    void theWorkedExampleIsWhole() throws Exception {
        example();

        MhlHistory history = only();
        assertThat(history.folder()).isEqualTo("R001_CU01");
        assertThat(history.generations())
                .containsExactly(
                        new MhlGeneration("R001_CU01/ascmhl/0001_R001_CU01_2026-03-04_180512Z.mhl", 1, State.GOOD),
                        new MhlGeneration("R001_CU01/ascmhl/0002_R001_CU01_2026-03-05_074000Z.mhl", 2, State.GOOD));
        assertThat(history.problems()).isEmpty();
        assertThat(history.isWhole()).isTrue();
    }

    @Test
    void takesOnlyChainsAndHashListsOfHistories() {
        assertThat(List.of("ascmhl/ascmhl_chain.xml", "A/B/ascmhl/0001.mhl", "ascmhl/x.mhl"))
                .allMatch(MhlHistories::takes);
        assertThat(List.of(
                        "ascmhl_chain.xml",
                        "0001.mhl",
                        "ascmhl/README.txt",
                        "xascmhl/0001.mhl",
                        "ascmhl/A/0001.mhl",
                        "ascmhl/._0001.mhl",
                        "ascmhl"))
                .noneMatch(MhlHistories::takes);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new MhlHistories().add("a.mhl", InputStream.nullInputStream()));
    }

    @Test
    void oneChangedByteShows() throws Exception {
        example();
        edit("R001_CU01/ascmhl/0001_R001_CU01_2026-03-04_180512Z.mhl", "SHUTTLE_01", "SHUTTLE_02");

        assertThat(states()).containsExactly(State.C4_DIFFERS, State.GOOD);
        assertThat(only().isWhole()).isFalse();
    }

    @Test
    void whatIsMissingIsSaid() throws Exception {
        example();
        files.remove("R001_CU01/ascmhl/0001_R001_CU01_2026-03-04_180512Z.mhl");

        assertThat(states()).containsExactly(State.MISSING, State.GOOD);
    }

    /** The standard doesn't say what a hash list is that the chain doesn't know; nothing vouches for it. */
    @Test
    void whatTheChainDoesNotKnowIsSaid() throws Exception {
        example();
        files.put("R001_CU01/ascmhl/0003_R001_CU01_2026-03-06_074000Z.mhl", generation("2026-03-06T07:40:00Z"));

        assertThat(states()).containsExactly(State.GOOD, State.GOOD, State.NOT_IN_CHAIN);
        assertThat(only().generations().get(2).sequence()).isEqualTo(3);
    }

    @Test
    void whatCannotBeReadIsSaid() throws Exception {
        example();
        edit("R001_CU01/ascmhl/0002_R001_CU01_2026-03-05_074000Z.mhl", "</hashlist>", "");

        assertThat(states()).containsExactly(State.GOOD, State.UNREADABLE);
    }

    @Test
    void withoutAChainNothingVouches() throws Exception {
        example();
        files.remove("R001_CU01/" + CHAIN);
        assertThat(states()).containsExactly(State.NOT_IN_CHAIN, State.NOT_IN_CHAIN);
        assertThat(kinds()).containsExactly(Kind.CHAIN_MISSING);

        for (String broken : List.of("", "<a/>", "<ascmhldirectory xmlns=\"urn:ASC:MHL:DIRECTORY:v2.0\">", "no xml")) {
            files.put("R001_CU01/" + CHAIN, broken.getBytes(StandardCharsets.UTF_8));
            assertThat(states()).containsExactly(State.NOT_IN_CHAIN, State.NOT_IN_CHAIN);
            assertThat(kinds()).containsExactly(Kind.CHAIN_UNREADABLE);
        }
    }

    /** 7.4. */
    @Test
    void numbersStartAtOneAndGrowByOne() throws Exception {
        example();
        String chain = "R001_CU01/" + CHAIN;
        byte[] whole = files.get(chain);

        edit(chain, "sequencenr=\"2\"", "sequencenr=\"3\"");
        assertThat(problems())
                .containsExactly(
                        HistoryProblem.of(Kind.SEQUENCE_BROKEN, "0002_R001_CU01_2026-03-05_074000Z.mhl", "3", "2"),
                        HistoryProblem.of(Kind.NUMBER_DIFFERS, "0002_R001_CU01_2026-03-05_074000Z.mhl", "3"));
        files.put(chain, whole);
        edit(chain, "sequencenr=\"1\"", "sequencenr=\"2\"");
        assertThat(kinds()).containsExactly(Kind.SEQUENCE_BROKEN, Kind.SEQUENCE_BROKEN, Kind.NUMBER_DIFFERS);
        files.put(chain, whole);
        edit(chain, " sequencenr=\"2\"", "");
        assertThat(kinds()).containsExactly(Kind.LINK_INCOMPLETE);
        assertThat(states()).containsExactly(State.GOOD, State.GOOD);
    }

    @Test
    void aLinkThatLeadsOutOfTheFolderIsNotFollowed() throws Exception {
        example();
        files.put("R001_CU01/0001.mhl", generation("2026-03-04T18:05:12Z"));
        edit("R001_CU01/" + CHAIN, "<path>0001", "<path>../0001");

        assertThat(states()).containsExactly(State.MISSING, State.GOOD, State.NOT_IN_CHAIN);
        assertThat(kinds()).contains(Kind.LINK_INCOMPLETE);
    }

    @Test
    void ofTwoLinksToOneHashListTheWorseCounts() throws Exception {
        example();
        String chain = "R001_CU01/" + CHAIN;
        edit(chain, "0002_R001_CU01_2026-03-05_074000Z", "0001_R001_CU01_2026-03-04_180512Z");

        assertThat(states()).containsExactly(State.C4_DIFFERS, State.NOT_IN_CHAIN);
        assertThat(kinds()).contains(Kind.LINK_REPEATED);
    }

    /** 6.3, 5.6.1.2; dates by common sense. */
    @Test
    void aGenerationFollowsTheOneBefore() throws Exception {
        history("A001", Map.of(), List.of("2026-03-05T07:40:00Z", "2026-03-04T07:40:00Z"), "*.tmp");
        assertThat(kinds()).containsExactly(Kind.DATE_BACKWARDS);

        files.clear();
        history("A001", Map.of(), List.of("2026-03-04T07:40:00Z", "2026-03-05T07:40:00Z"), "*.tmp", "*.bak");
        rename("A001/ascmhl/0002_A001_2026-03-05_074000Z.mhl", "A001/ascmhl/0002_B001_2026-03-05_074000Z.mhl");
        edit("A001/" + CHAIN, "0002_A001", "0002_B001");
        assertThat(kinds()).containsExactly(Kind.FOLDER_DIFFERS);

        rename("A001/ascmhl/0001_A001_2026-03-04_074000Z.mhl", "A001/ascmhl/first.mhl");
        edit("A001/" + CHAIN, "0001_A001_2026-03-04_074000Z", "first");
        assertThat(kinds()).containsExactly(Kind.NAME_UNUSUAL, Kind.FOLDER_DIFFERS);
    }

    @Test
    void patternsMayNotBeDropped() throws Exception {
        List<byte[]> generations = List.of(
                generation("2026-03-04T07:40:00Z", List.of("a", "b"), List.of()),
                generation("2026-03-05T07:40:00Z", List.of("b", "c"), List.of()));
        history("A001", generations);

        assertThat(problems())
                .containsExactly(HistoryProblem.of(Kind.PATTERN_DROPPED, "0002_A001_2026-03-05_074000Z.mhl", "a"));
    }

    /** 5.3.2: a reference to an older hash list of an inner history is lawful. */
    @Test
    void referencesToInnerHistoriesAreChecked() throws Exception {
        history("A001/Day1", Map.of(), List.of("2026-03-04T07:40:00Z", "2026-03-05T07:40:00Z"));
        String inner = "Day1/ascmhl/0001_Day1_2026-03-04_074000Z.mhl";
        byte[] first = files.get("A001/" + inner);
        history("A001", Map.of(inner, C4.checksumOf(first)), List.of("2026-03-04T07:40:00Z"));
        assertThat(judge()).allSatisfy(history -> {
            assertThat(history.problems()).isEmpty();
            assertThat(history.isWhole()).isTrue();
        });
        assertThat(judge()).extracting(MhlHistory::folder).containsExactly("A001", "A001/Day1");

        history("A001", Map.of(inner, Manifests.digest(C4, 1)), List.of("2026-03-04T07:40:00Z"));
        assertThat(judge().get(0).problems()).containsExactly(HistoryProblem.of(Kind.REFERENCE_C4_DIFFERS, inner));
        assertThat(judge().get(1).generations())
                .extracting(MhlGeneration::state)
                .containsExactly(State.C4_DIFFERS, State.GOOD);

        files.remove("A001/" + inner);
        assertThat(judge().get(0).problems()).containsExactly(HistoryProblem.of(Kind.REFERENCE_MISSING, inner));

        files.keySet().removeIf(path -> path.startsWith("A001/Day1"));
        assertThat(only().problems()).containsExactly(HistoryProblem.of(Kind.REFERENCE_ELSEWHERE, inner));
    }

    @Test
    void aHistoryAtTheTopHasNoFolder() throws Exception {
        history("", Map.of(), List.of("2026-03-04T07:40:00Z"));

        assertThat(only().folder()).isEmpty();
        assertThat(only().problems()).isEmpty();
        assertThat(only().isWhole()).isTrue();
    }

    @Test
    void chainsAreWrittenAsTheSchemaWants() throws Exception {
        MhlChain.Link link = new MhlChain.Link(1, "0001 & <more>.mhl", Manifests.digest(C4, 7));
        MhlChain chain = new MhlChain(List.of(link, new MhlChain.Link(2, "2.mhl", Manifests.digest(C4, 0))));
        byte[] written = write(chain);

        Schemas.validateChain(written);
        Schemas.validateChain(Manifests.resource(Manifests.EXAMPLE + CHAIN));
        assertThat(MhlChain.read(new ByteArrayInputStream(written))).isEqualTo(chain);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> write(new MhlChain(List.of(new MhlChain.Link(null, "a", Manifests.digest(C4, 1))))));
        assertThatExceptionOfType(IllegalStateException.class).isThrownBy(() -> write(new MhlChain(List.of())));
    }

    @Test
    void aChainThatIsCutOffIsRefused() {
        byte[] chain = Manifests.resource(Manifests.EXAMPLE + CHAIN);
        for (int length = 0; length < chain.length - 1; length++) {
            byte[] cut = java.util.Arrays.copyOf(chain, length);
            assertThatExceptionOfType(ManifestException.class)
                    .as("cut at %d", length)
                    .isThrownBy(() -> MhlChain.read(new ByteArrayInputStream(cut)));
        }
    }

    private void example() {
        for (String name : List.of(MhlChain.FILE_NAME, Manifests.FIRST_GENERATION, Manifests.SECOND_GENERATION)) {
            files.put("R001_CU01/ascmhl/" + name, Manifests.resource(Manifests.EXAMPLE + "ascmhl/" + name));
        }
    }

    private void history(String folder, Map<String, Checksum> references, List<String> dates, String... ignored)
            throws IOException {
        List<MhlReference> list = new ArrayList<>();
        references.forEach((path, c4) -> list.add(new MhlReference(path, c4)));
        List<byte[]> generations = new ArrayList<>();
        for (String date : dates) {
            generations.add(generation(date, List.of(ignored), list));
        }
        history(folder, generations);
    }

    private void history(String folder, List<byte[]> generations) throws IOException {
        String name = folder.isEmpty() ? "top" : folder.substring(folder.lastIndexOf('/') + 1);
        List<MhlChain.Link> links = new ArrayList<>();
        for (byte[] content : generations) {
            int number = links.size() + 1;
            String date = number == 1 ? "2026-03-04_074000Z" : "2026-03-05_074000Z";
            String file = "%04d_%s_%s.mhl".formatted(number, name, date);
            links.add(new MhlChain.Link(number, file, C4.checksumOf(content)));
            files.put((folder.isEmpty() ? "" : folder + "/") + "ascmhl/" + file, content);
        }
        files.put((folder.isEmpty() ? "" : folder + "/") + CHAIN, write(new MhlChain(links)));
    }

    private static byte[] generation(String date) throws IOException {
        return generation(date, List.of(), List.of());
    }

    private static byte[] generation(String date, List<String> ignored, List<MhlReference> references)
            throws IOException {
        MhlCreator creator = new MhlCreator(Instant.parse(date), "h", "t", "1", null, Process.IN_PLACE);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ManifestWriter writer = ManifestWriter.ascMhl(out, creator, new MhlScope(null, ignored, references))) {
            writer.write(Manifests.file("a.mxf", 3L, Action.ORIGINAL, Manifests.digest(MD5, 1)));
        }
        return out.toByteArray();
    }

    private static byte[] write(MhlChain chain) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        chain.write(out);
        return out.toByteArray();
    }

    private void edit(String path, String good, String bad) {
        String content = new String(files.get(path), StandardCharsets.UTF_8);
        assertThat(content).contains(good);
        files.put(path, content.replace(good, bad).getBytes(StandardCharsets.UTF_8));
    }

    private void rename(String from, String to) {
        files.put(to, files.remove(from));
    }

    private List<MhlHistory> judge() throws IOException {
        MhlHistories histories = new MhlHistories();
        for (Map.Entry<String, byte[]> file : files.entrySet()) {
            if (MhlHistories.takes(file.getKey())) {
                histories.add(file.getKey(), new ByteArrayInputStream(file.getValue()));
            }
        }
        return histories.judge();
    }

    private MhlHistory only() throws IOException {
        List<MhlHistory> histories = judge();
        assertThat(histories).hasSize(1);
        return histories.get(0);
    }

    private List<State> states() throws IOException {
        return only().generations().stream().map(MhlGeneration::state).toList();
    }

    private List<HistoryProblem> problems() throws IOException {
        return only().problems();
    }

    private List<Kind> kinds() throws IOException {
        return problems().stream().map(HistoryProblem::kind).toList();
    }
}
