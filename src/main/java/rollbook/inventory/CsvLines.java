package rollbook.inventory;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Takes one line of a CSV file apart. */
record CsvLines(char separator) {
    /** The cells of a line; nothing if a quotation mark isn't closed on it, or something follows a closed one. */
    Optional<List<String>> cells(String line) {
        CSVFormat format = CSVFormat.RFC4180.builder().setDelimiter(separator).get();
        try (CSVParser parser = CSVParser.parse(line, format)) {
            List<CSVRecord> records = parser.getRecords();
            return records.size() == 1 ? Optional.of(records.get(0).toList()) : Optional.empty();
        } catch (IOException | UncheckedIOException | IllegalStateException malformed) {
            return Optional.empty();
        }
    }
}
