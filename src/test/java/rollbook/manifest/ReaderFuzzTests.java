package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;

/**
 * A coverage-guided fuzzer at each kind of document, a quarter of a minute each ({@code -Dfuzz.seconds=3600} for longer).
 * What it finds is kept under {@code target/fuzz} and becomes a test.
 */
class ReaderFuzzTests {
    private static final int SECONDS = Integer.getInteger("fuzz.seconds", 15);
    private static final Path FOUND = Path.of("target", "fuzz");

    @TempDir(cleanup = CleanupMode.ALWAYS)
    Path folder;

    /** Two at a time: the fuzzer works in one thread. */
    @Test
    void noInputBreaksAReader() throws Exception {
        Files.createDirectories(FOUND);
        ExecutorService both = Executors.newFixedThreadPool(2);
        try {
            List<Future<String>> runs = new ArrayList<>();
            for (SoundDocuments.Kind kind : SoundDocuments.Kind.values()) {
                runs.add(both.submit(() -> fuzz(kind)));
            }
            for (Future<String> run : runs) {
                assertThat(run.get()).isEmpty();
            }
        } finally {
            both.shutdownNow();
        }
    }

    /** Empty if nothing was found, else the end of the fuzzer's report. */
    private String fuzz(SoundDocuments.Kind kind) throws IOException, InterruptedException {
        Path seeds = Files.createDirectories(folder.resolve(kind.name()));
        int number = 0;
        for (HostileDocuments.Document document : SoundDocuments.all(new SplittableRandom(1))) {
            Files.write(seeds.resolve("seed" + number++), document.bytes());
        }
        Path log = folder.resolve(kind + ".log");
        Process fuzzer = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx512m",
                        "-XX:+UseSerialGC",
                        "-cp",
                        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                        "-Dfuzz.kind=" + kind,
                        "com.code_intelligence.jazzer.Jazzer",
                        "--target_class=" + FuzzTarget.class.getName(),
                        "--instrumentation_includes=rollbook.manifest.**",
                        "--reproducer_path=" + folder,
                        "-max_total_time=" + SECONDS,
                        "-timeout=60",
                        // The heap is limited above. Linux counts what this process took once among what that one
                        // takes.
                        "-rss_limit_mb=0",
                        "-max_len=8192",
                        "-artifact_prefix=" + FOUND.toAbsolutePath() + "/" + kind + "-",
                        seeds.toString())
                .redirectErrorStream(true)
                .redirectOutput(log.toFile())
                .start();
        boolean ended = fuzzer.waitFor(SECONDS + 120L, TimeUnit.SECONDS);
        if (!ended) {
            fuzzer.destroyForcibly();
        }
        List<String> lines = Files.readAllLines(log, java.nio.charset.StandardCharsets.ISO_8859_1);
        lines.stream()
                .filter(line -> line.startsWith("Done") || line.startsWith("stat::number_of_executed"))
                .forEach(line -> System.out.println("Fuzzed " + kind + ": " + line));
        boolean fine = ended && fuzzer.exitValue() == 0;
        return fine ? "" : kind + "\n" + String.join("\n", lines.subList(Math.max(0, lines.size() - 60), lines.size()));
    }
}
