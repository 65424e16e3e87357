package rollbook.testing;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Figures from outside the project, a line each; the file's comments explain its columns. */
public final class CheckValueFile {
    private static final CSVFormat FORMAT = CSVFormat.DEFAULT
            .builder()
            .setCommentMarker('#')
            .setHeader()
            .setSkipHeaderRecord(true)
            .get();

    private CheckValueFile() {}

    /** @param name of a file among the resources of the test's package */
    public static List<CSVRecord> lines(Class<?> test, String name) {
        try (InputStream file = Objects.requireNonNull(test.getResourceAsStream(name), name);
                CSVParser lines = FORMAT.parse(new InputStreamReader(file, StandardCharsets.UTF_8))) {
            return lines.getRecords();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
