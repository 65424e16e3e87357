package rollbook.database;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A PostgreSQL server whose parent was killed goes on running and keeps the data directory locked. It is stopped before
 * a new one starts. A lock file that names a process which is not that server (process ids are reused) is removed, and
 * the process left alone.
 */
final class OrphanedServer {
    private static final Logger log = LoggerFactory.getLogger(OrphanedServer.class);
    private static final long STOP_WAIT_SECONDS = 20;

    private OrphanedServer() {}

    static void stopIn(Path dataDirectory) throws IOException {
        Path lockFile = dataDirectory.resolve("postmaster.pid");
        if (!Files.exists(lockFile)) {
            return;
        }
        Optional<ProcessHandle> orphan = serverOf(dataDirectory);
        if (orphan.isEmpty()) {
            Files.deleteIfExists(lockFile);
            return;
        }
        log.warn("Stopping the PostgreSQL server that an earlier run left behind");
        orphan.get().destroy();
        if (!ended(orphan.get())) {
            orphan.get().destroyForcibly();
            if (!ended(orphan.get())) {
                throw new IOException("The PostgreSQL server that an earlier run left behind does not stop");
            }
            Files.deleteIfExists(lockFile);
        }
    }

    static boolean isRunningIn(Path dataDirectory) {
        try {
            return serverOf(dataDirectory).isPresent();
        } catch (IOException e) {
            // The file may vanish between two looks; the next look tells.
            return true;
        }
    }

    private static Optional<ProcessHandle> serverOf(Path dataDirectory) throws IOException {
        Path lockFile = dataDirectory.resolve("postmaster.pid");
        if (!Files.exists(lockFile)) {
            return Optional.empty();
        }
        List<String> lines = Files.readAllLines(lockFile);
        if (lines.isEmpty() || !lines.get(0).strip().matches("\\d{1,18}")) {
            return Optional.empty();
        }
        return ProcessHandle.of(Long.parseLong(lines.get(0).strip()))
                .filter(ProcessHandle::isAlive)
                .filter(process -> isServerOf(process, dataDirectory));
    }

    private static boolean isServerOf(ProcessHandle process, Path dataDirectory) {
        Path proc = Path.of("/proc", Long.toString(process.pid()));
        if (Files.exists(proc)) {
            try {
                return Files.readSymbolicLink(proc.resolve("exe"))
                                .getFileName()
                                .toString()
                                .startsWith("postgres")
                        && Files.isSameFile(Files.readSymbolicLink(proc.resolve("cwd")), dataDirectory);
            } catch (IOException e) {
                return false;
            }
        }
        return process.info()
                .command()
                .filter(command -> command.contains("postgres"))
                .isPresent();
    }

    private static boolean ended(ProcessHandle process) throws IOException {
        try {
            process.onExit().get(STOP_WAIT_SECONDS, TimeUnit.SECONDS);
            return true;
        } catch (TimeoutException e) {
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException(e);
        } catch (ExecutionException e) {
            throw new IOException(e);
        }
    }
}
