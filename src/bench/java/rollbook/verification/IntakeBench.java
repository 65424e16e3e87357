package rollbook.verification;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import rollbook.bench.Figures;
import rollbook.manifest.ManifestException;
import rollbook.manifest.ManifestReader;

/**
 * A copy's manifest comes in: it is parsed, divided over the rolls, stored, and judged against the card's, which is as
 * long. The parts of the work are measured by themselves in the same rounds, and so is what GNU tools take to sort and
 * join the two lists.
 */
final class IntakeBench {
    private static final int WARM_UP_ROUNDS = 2;
    private static final int CHUNK_BYTES = 448 << 10;
    private static final double MOST_TIMES_PARSING = 1.3;
    private static final double TIMES_FASTER_THAN_SORTING = 3;
    private static final double MOST_BYTES_PER_FILE = 20;

    private final Portal portal;
    private final String label;
    private final int files;
    private final Path reference;
    private final Path copy;
    private int documents;

    private IntakeBench(Portal portal, String format, int files, Path reference, Path copy) {
        this.portal = portal;
        this.label = "%s, %,d files: ".formatted(format, files);
        this.files = files;
        this.reference = reference;
        this.copy = copy;
    }

    /** Folder, format, number of files, rounds (0: once, and only whether it works), reference, copy. */
    public static void main(String[] arguments) throws Exception {
        int files = Integer.parseInt(arguments[2]);
        int rounds = Integer.parseInt(arguments[3]);
        try (Portal portal = Portal.start(Path.of(arguments[0]))) {
            IntakeBench bench = new IntakeBench(
                    portal, arguments[1], files, Path.of(arguments[4]), Path.of(arguments[5]));
            if (rounds == 0) {
                bench.once();
            } else {
                bench.measure(Path.of(arguments[0]), arguments[1], rounds);
            }
        }
    }

    private void once() throws Exception {
        Portal.Show show = portal.show();
        long start = System.nanoTime();
        store(show, reference, Subject.CARD);
        judge(show);
        Figures.print(label + "reference stored", Figures.seconds(start), "s");
        start = System.nanoTime();
        store(show, copy, Subject.COPY);
        judge(show);
        Figures.print(label + "copy stored and judged", Figures.seconds(start), "s");
        requireProven(show);
    }

    private void measure(Path folder, String format, int rounds) throws Exception {
        double[] parse = new double[rounds];
        double[] pack = new double[rounds];
        double[] store = new double[rounds];
        double[] intake = new double[rounds];
        double[] ratio = new double[rounds];
        double[] anew = new double[rounds];
        double[] sorted = new double[rounds];
        double[] faster = new double[rounds];
        long before = 0;
        for (int round = -WARM_UP_ROUNDS; round < rounds; round++) {
            if (round == 0) {
                before = portal.evidenceBytes();
                documents = 0;
            }
            int at = Math.max(0, round);
            Portal.Show show = portal.show();
            store(show, reference, Subject.CARD);
            judge(show);

            parse[at] = parse();
            pack[at] = pack();
            long start = System.nanoTime();
            store(show, copy, Subject.COPY);
            store[at] = Figures.seconds(start);
            judge(show);
            intake[at] = Figures.seconds(start);
            ratio[at] = intake[at] / (MOST_TIMES_PARSING * parse[at] + pack[at]);
            requireProven(show);
            anew[at] = store[at] + judgeAnew(show);
            if (!format.equals("mhl")) {
                sorted[at] = sortAndJoin(folder);
                faster[at] = sorted[at] / intake[at];
            }
        }
        Figures.print(label + "document", Files.size(copy) / 1e6, "MB");
        Figures.print(label + "only parsing", Figures.median(parse), "s");
        Figures.print(label + "only packing", Figures.median(pack), "s");
        Figures.print(label + "storing, read meanwhile", Figures.median(store), "s");
        Figures.print(label + "intake with judging", Figures.median(intake), "s");
        Figures.print(label + "the same, both documents read again", Figures.median(anew), "s");
        Figures.atMost(
                label + "intake / (1.3 × parsing + packing)",
                Figures.median(ratio),
                "",
                1,
                "parsing " + Figures.text(Figures.median(parse)) + " s, packing "
                        + Figures.text(Figures.median(pack)) + " s");
        if (!format.equals("mhl")) {
            Figures.atLeast(
                    label + "times faster than sort and join",
                    Figures.median(faster),
                    "",
                    TIMES_FASTER_THAN_SORTING,
                    "sort and join " + Figures.text(Figures.median(sorted)) + " s");
        }
        Figures.done(label + "heap", true, "256 MB");
        double perFile = (double) (portal.evidenceBytes() - before) / documents / files;
        Figures.atMost(
                label + "on disk for each file", perFile, "B", MOST_BYTES_PER_FILE, "digest 16 B");
    }

    private double parse() throws IOException, ManifestException {
        long start = System.nanoTime();
        try (InputStream in = Files.newInputStream(copy)) {
            new ManifestReader().read(in, rollbook.manifest.DocumentHints.named(copy.getFileName().toString()), entry -> {});
        }
        return Figures.seconds(start);
    }

    private double pack() throws IOException {
        long start = System.nanoTime();
        ChunkPacking packing = new ChunkPacking();
        long bytes = 0;
        try (InputStream in = Files.newInputStream(copy)) {
            for (byte[] chunk = in.readNBytes(CHUNK_BYTES); chunk.length > 0; chunk = in.readNBytes(CHUNK_BYTES)) {
                bytes += packing.pack(chunk).content().length;
            }
        }
        if (bytes == 0) {
            throw new IllegalStateException("nothing packed");
        }
        return Figures.seconds(start);
    }

    private void store(Portal.Show show, Path document, Subject subject) throws IOException {
        documents++;
        try (InputStream in = new BufferedInputStream(Files.newInputStream(document), 1 << 16)) {
            portal.get(Documents.class)
                    .store(
                            show.wrangler(),
                            document.getFileName().toString(),
                            in,
                            subject,
                            subject == Subject.COPY ? show.drive() : null);
        }
    }

    private void judge(Portal.Show show) throws IOException {
        portal.get(RollJudge.class).judge(show.wrangler().productionId(), show.roll());
    }

    /** Judging when nothing is remembered of either document, as after a start. */
    private double judgeAnew(Portal.Show show) throws IOException {
        portal.get(ReadDocuments.class).forgetAll();
        long start = System.nanoTime();
        judge(show);
        return Figures.seconds(start);
    }

    private void requireProven(Portal.Show show) {
        String verdict = portal.jdbc()
                .sql("select verdict || ' ' || same from verification_verdict where roll_id = ? order by id desc limit 1")
                .param(show.roll())
                .query(String.class)
                .single();
        if (!verdict.equals("PROVEN " + files)) {
            throw new IllegalStateException("The copy came out as " + verdict);
        }
    }

    /** The lists as GNU tools need them to be joined: without the folder that tells the medium. */
    private double sortAndJoin(Path folder) throws IOException, InterruptedException {
        String script = """
                set -eu
                export LC_ALL=C
                cd "$1"
                for list in "$2" "$3"; do
                    [ -e "${list##*/}.list" ] || { sed 's| [A-Z]*/| |' "$list" > part; mv part "${list##*/}.list"; }
                done
                """;
        bash(script, folder.toString(), reference.toString(), copy.toString());
        long start = System.nanoTime();
        bash("""
                set -eu
                export LC_ALL=C
                cd "$1"
                sort -k2 "${2##*/}.list" > reference.sorted
                sort -k2 "${3##*/}.list" > copy.sorted
                join -1 2 -2 2 reference.sorted copy.sorted > joined
                """, folder.toString(), reference.toString(), copy.toString());
        return Figures.seconds(start);
    }

    private static void bash(String script, String... arguments) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of("bash", "-c", script, "bench"));
        command.addAll(List.of(arguments));
        int status = new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start()
                .waitFor();
        if (status != 0) {
            throw new IOException("sort and join ended with " + status);
        }
    }
}
