package rollbook.database;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.net.ServerSocket;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A real PostgreSQL server that belongs to this process: durable, behind a password, and started again if it dies.
 * One process at a time may use a data folder; a second one gets an {@link EmbeddedDatabaseFailure} that says so.
 */
final class EmbeddedDatabase implements AutoCloseable {
    static final String OWNER = "rollbook";

    private static final Logger log = LoggerFactory.getLogger(EmbeddedDatabase.class);
    private static final Duration STARTUP_WAIT = Duration.ofSeconds(90);
    private static final Duration WATCH_INTERVAL = Duration.ofSeconds(1);

    private final Path folder;
    private final FileLock lock;
    private final DatabaseCredentials credentials;
    private final int port;
    private @Nullable EmbeddedPostgres server;
    private boolean closed;

    private EmbeddedDatabase(Path folder, FileLock lock, DatabaseCredentials credentials, int port) {
        this.folder = folder;
        this.lock = lock;
        this.credentials = credentials;
        this.port = port;
    }

    static EmbeddedDatabase start(Path folder) {
        try {
            Files.createDirectories(folder);
            EmbeddedDatabase database =
                    new EmbeddedDatabase(folder, lock(folder), DatabaseCredentials.in(folder), freePort());
            database.startServer();
            database.createOwnerAndDatabase();
            database.watch();
            return database;
        } catch (IOException | SQLException | IllegalStateException e) {
            throw EmbeddedDatabaseFailure.notStarted(folder, e);
        }
    }

    String jdbcUrl() {
        return "jdbc:postgresql://127.0.0.1:%d/%s".formatted(port, OWNER);
    }

    String ownerPassword() {
        return credentials.owner();
    }

    @Override
    public synchronized void close() {
        closed = true;
        try {
            if (server != null) {
                server.close();
            }
            lock.channel().close();
        } catch (IOException e) {
            log.warn("The embedded PostgreSQL did not stop cleanly: {}", e.getMessage());
        }
    }

    private Path dataDirectory() {
        return folder.resolve("postgresql");
    }

    private synchronized void startServer() throws IOException {
        if (closed) {
            return;
        }
        Path data = dataDirectory();
        UnfinishedSetup.setAside(data);
        OrphanedServer.stopIn(data);
        Path passwordFile = credentials.writeSuperuserFile();
        try {
            server = EmbeddedPostgres.builder()
                    .setDataDirectory(data)
                    .setCleanDataDirectory(false)
                    .setRegisterShutdownHook(false)
                    .setPort(port)
                    .setPGStartupWait(STARTUP_WAIT)
                    // These go to initdb as options: with them there is no moment at which a password isn't asked for.
                    .setLocaleConfig("locale", "C.UTF-8")
                    .setLocaleConfig("auth-host", "scram-sha-256")
                    .setLocaleConfig("auth-local", "scram-sha-256")
                    .setLocaleConfig("pwfile", passwordFile.toString())
                    .setConnectConfig("password", credentials.superuser())
                    .setServerConfig("listen_addresses", "127.0.0.1")
                    .setServerConfig("unix_socket_directories", "''")
                    // The library is made for tests and starts the server with -F; a book of record must survive power
                    // loss.
                    .setServerConfig("fsync", "on")
                    .setServerConfig("synchronous_commit", "on")
                    .setServerConfig("full_page_writes", "on")
                    .setServerConfig("logging_collector", "on")
                    .setServerConfig("log_filename", "postgresql-%a.log")
                    .setServerConfig("log_truncate_on_rotation", "on")
                    .setServerConfig("log_rotation_age", "1d")
                    .start();
        } finally {
            Files.deleteIfExists(passwordFile);
        }
        UnfinishedSetup.markFinished(data);
    }

    private void createOwnerAndDatabase() throws SQLException {
        EmbeddedPostgres running = server;
        if (running == null) {
            throw new IllegalStateException("the server is not running");
        }
        try (Connection connection = running.getPostgresDatabase().getConnection();
                Statement statement = connection.createStatement()) {
            if (!exists(statement, "select 1 from pg_roles where rolname = '" + OWNER + "'")) {
                statement.execute("create role " + OWNER + " login");
            }
            // The password is letters and digits only (see DatabaseCredentials), so it needs no quoting.
            statement.execute("alter role " + OWNER + " password '" + credentials.owner() + "'");
            if (!exists(statement, "select 1 from pg_database where datname = '" + OWNER + "'")) {
                statement.execute("create database " + OWNER + " owner " + OWNER);
            }
        }
    }

    private static boolean exists(Statement statement, String query) throws SQLException {
        try (var rows = statement.executeQuery(query)) {
            return rows.next();
        }
    }

    /** Starts the server again if its process dies; connections of the pool recover by themselves. */
    private void watch() {
        Thread watcher = new Thread(this::watchServer, "embedded-postgresql-watch");
        watcher.setDaemon(true);
        watcher.start();
    }

    private void watchServer() {
        try {
            while (true) {
                Thread.sleep(WATCH_INTERVAL.toMillis());
                synchronized (this) {
                    if (closed) {
                        return;
                    }
                    if (!OrphanedServer.isRunningIn(dataDirectory())) {
                        restart();
                    }
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void restart() {
        log.error("The embedded PostgreSQL has stopped unexpectedly; starting it again");
        try {
            // Before the old handle is closed: it would wait for a process that is gone while its lock file lies there.
            OrphanedServer.stopIn(dataDirectory());
            if (server != null) {
                server.close();
            }
            startServer();
            log.info("The embedded PostgreSQL runs again");
        } catch (IOException | IllegalStateException e) {
            log.error("The embedded PostgreSQL could not be started again; trying once more", e);
        }
    }

    private static FileLock lock(Path folder) throws IOException {
        FileChannel channel =
                FileChannel.open(folder.resolve("lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        FileLock lock = null;
        try {
            lock = channel.tryLock();
        } catch (OverlappingFileLockException e) {
            log.debug("The folder is locked by this very process", e);
        }
        if (lock == null) {
            channel.close();
            throw EmbeddedDatabaseFailure.inUse(folder);
        }
        return lock;
    }

    private static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }

    /**
     * An interrupted first start leaves a data directory that can be neither used nor initialised again. Nothing was
     * ever stored in it, yet it is set aside rather than deleted: deleting data directories is not this program's job.
     */
    private static final class UnfinishedSetup {
        static void setAside(Path data) throws IOException {
            if (Files.exists(data) && !Files.exists(marker(data))) {
                Path aside = data.resolveSibling("unfinished-setup-" + UUID.randomUUID());
                log.warn("The first start of PostgreSQL was interrupted; its unfinished files are now in {}", aside);
                Files.move(data, aside);
            }
        }

        static void markFinished(Path data) throws IOException {
            if (!Files.exists(marker(data))) {
                Files.createFile(marker(data));
            }
        }

        private static Path marker(Path data) {
            return data.resolveSibling("postgresql-is-set-up");
        }
    }
}
