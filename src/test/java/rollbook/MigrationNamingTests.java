package rollbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class MigrationNamingTests {
    private static final Pattern NAME = Pattern.compile("V(\\d{8}_\\d{4})__([a-z]+)_[a-z]+_[a-z0-9_]+\\.sql");

    @Test
    void migrationsAreNamedByTimeModuleVerbAndNoun() throws IOException {
        for (Path file : migrations()) {
            Matcher name = NAME.matcher(file.getFileName().toString());
            assertThat(name.matches())
                    .as("%s: V<yyyymmdd>_<hhmm>__<module>_<verb>_<noun>.sql", file)
                    .isTrue();
            assertThat(Path.of("src/main/java/rollbook", name.group(2)))
                    .as("the module of %s", file)
                    .isDirectory();
        }
    }

    @Test
    void noTwoMigrationsShareAVersion() throws IOException {
        assertThat(migrations().stream()
                        .map(file -> file.getFileName().toString().substring(0, 14)))
                .doesNotHaveDuplicates();
    }

    @Test
    void tablesAreCalledAfterTheirModule() throws IOException {
        Pattern table = Pattern.compile("(?m)^create table ([a-z_0-9]+)");
        for (Path file : migrations()) {
            Matcher name = NAME.matcher(file.getFileName().toString());
            if (!name.matches() || name.group(2).equals("database")) {
                continue;
            }
            Matcher tables = table.matcher(Files.readString(file));
            while (tables.find()) {
                assertThat(tables.group(1)).as(file.toString()).startsWith(name.group(2) + "_");
            }
        }
    }

    private static List<Path> migrations() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("db/migration"))) {
            List<Path> found = files.sorted().toList();
            assertThat(found).hasSizeGreaterThan(5);
            return found;
        }
    }
}
