package rollbook.journey;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Properties;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The embedded database's folder: who may use it, how safe it is, and what a dirty end leaves in it. */
class DataFolderCrashTests {
    @TempDir
    Path folder;

    @Test
    void aFolderHasOnePortalAtATimeAndASecondOneSaysSo() throws Exception {
        try (PortalProcess first = PortalProcess.start(folder);
                HttpVisitor visitor = new HttpVisitor(first.base())) {
            assertThat(PortalProcess.failToStart(folder))
                    .contains("Another Rollbook is running on the data folder " + folder, "spring.datasource.url");
            visitor.open("/set-up");
            assertThat(visitor.text()).as("the first one goes on").contains("Set up Rollbook");
        }
    }

    @Test
    void theServerIsDurableAndBehindAPassword() throws Exception {
        try (PortalProcess portal = PortalProcess.start(folder)) {
            assertThat(portal.base()).isNotEmpty();
            try (Connection owner = DriverManager.getConnection(url("rollbook"), "rollbook", password("owner"));
                    Statement statement = owner.createStatement()) {
                for (String setting : List.of("fsync", "synchronous_commit", "full_page_writes")) {
                    try (ResultSet row = statement.executeQuery("show " + setting)) {
                        row.next();
                        assertThat(row.getString(1)).as(setting).isEqualTo("on");
                    }
                }
                Assertions.assertThatThrownBy(() -> statement.execute("copy (select 1) to program 'true'"))
                        .hasMessageContaining("permission denied");
            }
            for (String user : List.of("postgres", "rollbook")) {
                Assertions.assertThatThrownBy(() -> DriverManager.getConnection(url("rollbook"), user, ""))
                        .as("%s without a password", user)
                        .isInstanceOf(SQLException.class);
                Assertions.assertThatThrownBy(() -> DriverManager.getConnection(url("rollbook"), user, "guess"))
                        .as("%s with another one", user)
                        .isInstanceOf(SQLException.class);
            }
        }
    }

    @Test
    void aLockFileThatNamesAForeignProcessLeavesThatProcessAlone() throws Exception {
        PortalProcess.start(folder).close();
        Process foreign = new ProcessBuilder("sleep", "600").start();
        try {
            Path postgresql = folder.resolve("postgresql");
            Files.writeString(
                    postgresql.resolve("postmaster.pid"),
                    foreign.pid() + "\n" + postgresql + "\n1\n5432\n\nlocalhost\n\n");
            PortalProcess.start(folder).close();
            assertThat(foreign.isAlive()).isTrue();
        } finally {
            foreign.destroyForcibly();
        }
    }

    @Test
    void anInterruptedFirstStartIsSetAsideAndTheNextOneWorks() throws Exception {
        Files.createDirectories(folder.resolve("postgresql").resolve("base"));
        PortalProcess.start(folder).close();
        try (var files = Files.list(folder)) {
            assertThat(files.map(file -> file.getFileName().toString()))
                    .anyMatch(name -> name.startsWith("unfinished-setup-"))
                    .contains("postgresql-is-set-up");
        }
    }

    private String url(String database) throws Exception {
        String port = Files.readAllLines(folder.resolve("postgresql").resolve("postmaster.pid"))
                .get(3);
        return "jdbc:postgresql://127.0.0.1:%s/%s".formatted(port.strip(), database);
    }

    private String password(String role) throws Exception {
        Properties passwords = new Properties();
        try (var in = Files.newInputStream(folder.resolve("database-passwords.properties"))) {
            passwords.load(in);
        }
        return passwords.getProperty(role);
    }
}
