package rollbook.journey;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The packaged portal as a process of its own, on the embedded database in a folder of the test's. */
final class PortalProcess implements AutoCloseable {
    private static final long START_SECONDS = 180;
    private static final Pattern SETUP_CODE = Pattern.compile("one-time code: ([A-Z0-9-]+)");

    private final Process process;
    private final int port;
    private final Path data;
    private final List<String> log = new CopyOnWriteArrayList<>();
    private volatile boolean undisturbed = true;
    private final CompletableFuture<Boolean> started = new CompletableFuture<>();

    private PortalProcess(Process process, int port, Path data) {
        this.process = process;
        this.port = port;
        this.data = data;
        Thread reader = new Thread(this::readLog, "portal-log");
        reader.setDaemon(true);
        reader.start();
    }

    /** Starts the portal and waits until it answers. */
    static PortalProcess start(Path data, String... options) throws Exception {
        PortalProcess portal = launch(data, options);
        assertThat(portal.started.get(START_SECONDS, TimeUnit.SECONDS))
                .as("the portal starts: %s", portal.tail())
                .isTrue();
        return portal;
    }

    /** Starts the portal on a folder on which it can't start, and gives what it printed. */
    static String failToStart(Path data) throws Exception {
        PortalProcess portal = launch(data);
        assertThat(portal.process.waitFor(START_SECONDS, TimeUnit.SECONDS)).isTrue();
        assertThat(portal.started.get(START_SECONDS, TimeUnit.SECONDS)).isFalse();
        return portal.tail();
    }

    private static PortalProcess launch(Path data, String... options) throws IOException {
        Path jar = Path.of("target", "rollbook.jar");
        assertThat(jar).as("these tests run after the jar is packaged").exists();
        int port = freePort();
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-Xmx512m",
                "-jar",
                jar.toString(),
                "--server.port=" + port,
                "--rollbook.data=" + data));
        command.addAll(List.of(options));
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        builder.environment().remove("SPRING_DATASOURCE_URL");
        return new PortalProcess(builder.start(), port, data);
    }

    String base() {
        return "http://localhost:" + port;
    }

    String setupCode() {
        return log.stream()
                .map(SETUP_CODE::matcher)
                .filter(Matcher::find)
                .map(code -> code.group(1))
                .reduce((earlier, later) -> later)
                .orElseThrow(() -> new AssertionError("no one-time code in " + tail()));
    }

    /** Whether nothing of it has been killed yet. */
    boolean isUndisturbed() {
        return undisturbed;
    }

    /** kill -9 of the portal alone; its PostgreSQL server goes on. */
    void kill() throws InterruptedException {
        undisturbed = false;
        process.destroyForcibly();
        process.waitFor();
    }

    /** kill -9 of the PostgreSQL server alone. */
    void killDatabase() throws IOException {
        undisturbed = false;
        long pid = Long.parseLong(Files.readAllLines(data.resolve("postgresql").resolve("postmaster.pid"))
                .get(0)
                .strip());
        ProcessHandle server = ProcessHandle.of(pid).orElseThrow();
        server.destroyForcibly();
        server.onExit().join();
    }

    @Override
    public void close() {
        process.destroy();
        try {
            process.onExit().get(60, TimeUnit.SECONDS);
        } catch (TimeoutException | ExecutionException e) {
            process.destroyForcibly().onExit().join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    String tail() {
        List<String> lines = List.copyOf(log);
        return String.join("\n", lines.subList(Math.max(0, lines.size() - 60), lines.size()));
    }

    private void readLog() {
        try (BufferedReader lines =
                new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
            String line;
            boolean ready = false;
            while ((line = lines.readLine()) != null) {
                log.add(line);
                ready |= line.contains("Started Application");
                // The one-time code is printed right after the portal is ready; without it there is an account.
                if (ready && (line.contains("Starting scheduler") || line.contains("one-time code"))) {
                    started.complete(true);
                }
            }
        } catch (IOException e) {
            log.add("The log ends here: " + e.getMessage());
        } finally {
            started.complete(false);
        }
    }

    private static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }
}
