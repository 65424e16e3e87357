package rollbook.bench;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import rollbook.bench.Documents.Medium;

/** Starts what is measured, each in a process of its own that ends by itself. */
final class Bench {
    private static final int MILLION = 1_000_000;
    private static final int TEN_MILLION = 10 * MILLION;
    private static final long SEED = 20_260_304;

    private Bench() {}

    public static void main(String[] arguments) throws IOException, InterruptedException {
        Path folder = Path.of(arguments[0]).toAbsolutePath();
        switch (arguments[1]) {
            case "intake" -> {
                intake(folder, 5);
                memory(folder);
                upload(folder);
            }
            case "intake-only" -> intake(folder, 5);
            case "memory" -> memory(folder);
            case "upload" -> upload(folder);
            case "clips" -> run(folder, "512m", "rollbook.verification.ClipBench");
            case "forecast" -> {
                runOnOneCore(folder, "40m", "rollbook.burndown.ForecastBench", "once");
                runOnOneCore(folder, "512m", "rollbook.burndown.ForecastBench", "growth");
            }
            case "turnaround" -> run(folder, "256m", "rollbook.turnaround.TurnaroundBench");
            case "pages" -> run(folder, "512m", "rollbook.journey.PageBench");
            default -> {
                System.err.println(
                        "intake (= intake-only, memory and upload), intake-only, memory, upload, clips, forecast,"
                                + " turnaround, pages");
                System.exit(arguments[1].equals("list") ? 0 : 2);
            }
        }
    }

    private static void intake(Path folder, int rounds) throws IOException, InterruptedException {
        for (String format : List.of("gnu", "gnu-unordered", "mhl")) {
            Path reference = document(folder, format, Medium.CARD, MILLION);
            Path copy = document(folder, format, Medium.DRIVE, MILLION);
            run(folder, "256m", "rollbook.verification.IntakeBench", format, MILLION, rounds, reference, copy);
        }
    }

    private static void memory(Path folder) throws IOException, InterruptedException {
        for (String format : List.of("gnu", "mhl")) {
            Path reference = document(folder, format, Medium.CARD, TEN_MILLION);
            Path copy = document(folder, format, Medium.DRIVE, TEN_MILLION);
            boolean works =
                    run(folder, "1g", "rollbook.verification.IntakeBench", format, TEN_MILLION, 0, reference, copy);
            Figures.done(format + ", 10,000,000 files: works with", works, "1 GB of heap");
        }
    }

    private static void upload(Path folder) throws IOException, InterruptedException {
        for (String format : List.of("gnu", "mhl")) {
            Path copy = document(folder, format, Medium.DRIVE, MILLION);
            run(folder, "512m", "rollbook.verification.UploadBench", format, 7, copy);
        }
    }

    private static Path document(Path folder, String format, Medium medium, int files) throws IOException {
        Path documents = Files.createDirectories(folder.resolve("documents"));
        Path made = Documents.name(documents, format, medium, files);
        if (!Files.exists(made)) {
            Path whole = Documents.make(documents, format, medium, files, SEED);
            Files.move(whole, made);
        }
        return made;
    }

    private static boolean run(Path folder, String heap, String type, Object... arguments)
            throws IOException, InterruptedException {
        return run(folder, List.of("-Xmx" + heap), type, arguments);
    }

    /** The garbage collector, too, finds one core only; that no other is used, taskset can see to. */
    private static void runOnOneCore(Path folder, String heap, String type, Object... arguments)
            throws IOException, InterruptedException {
        run(folder, List.of("-Xmx" + heap, "-XX:ActiveProcessorCount=1"), type, arguments);
    }

    private static boolean run(Path folder, List<String> options, String type, Object... arguments)
            throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString()));
        command.addAll(options);
        command.addAll(List.of("-cp", ManagementFactory.getRuntimeMXBean().getClassPath(), type, folder.toString()));
        Arrays.stream(arguments).map(String::valueOf).forEach(command::add);
        Process process = new ProcessBuilder(command)
                .redirectOutput(ProcessBuilder.Redirect.INHERIT)
                .redirectError(ProcessBuilder.Redirect.appendTo(folder.resolve("log.txt").toFile()))
                .start();
        int status = process.waitFor();
        if (status != 0) {
            System.err.println(type + " " + List.of(arguments) + " ended with " + status + ", see "
                    + folder.resolve("log.txt"));
        }
        return status == 0;
    }
}
