package rollbook.report;

import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.CSVRecord;
import rollbook.web.SafeCell;

/**
 * The facts of a report in their one order. Written as a CSV file they are always the same bytes, so that one SHA-256 says
 * whether two reports tell the same: RFC 4180 with a header line, lines that end in CR and LF, UTF-8, cells made safe as
 * {@link SafeCell} does.
 */
record FactSheet(List<Fact> facts) {
    private static final CSVFormat FORMAT = CSVFormat.RFC4180;

    FactSheet {
        facts = facts.stream().sorted(Fact.ORDER).toList();
    }

    /** Line after line, without holding the file. */
    void write(OutputStream out) throws IOException {
        Writer text = new OutputStreamWriter(out, StandardCharsets.UTF_8);
        CSVPrinter csv = new CSVPrinter(text, FORMAT);
        csv.printRecord(Arrays.stream(Column.values()).map(Column::header));
        for (Fact fact : facts) {
            csv.printRecord(fact.row().stream().map(SafeCell::write));
        }
        csv.flush();
    }

    byte[] bytes() {
        var bytes = new java.io.ByteArrayOutputStream();
        try {
            write(bytes);
        } catch (IOException inMemory) {
            throw new UncheckedIOException(inMemory);
        }
        return bytes.toByteArray();
    }

    /** Of the file's bytes, in lower-case hexadecimal. */
    String sha256() {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            write(new DigestOutputStream(OutputStream.nullOutputStream(), digest));
            return HexFormat.of().formatHex(digest.digest());
        } catch (IOException | NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    /** Reads what {@link #write} wrote. */
    static FactSheet parse(String csv) {
        List<Fact> facts = new ArrayList<>();
        try (CSVParser lines = CSVParser.parse(new StringReader(csv), FORMAT)) {
            List<Column> columns = new ArrayList<>();
            for (CSVRecord line : lines) {
                if (columns.isEmpty()) {
                    line.forEach(header -> columns.add(Column.valueOf(header.toUpperCase(Locale.ROOT))));
                } else {
                    facts.add(fact(columns, line));
                }
            }
        } catch (IOException inMemory) {
            throw new UncheckedIOException(inMemory);
        }
        return new FactSheet(facts);
    }

    private static Fact fact(List<Column> columns, CSVRecord line) {
        String kind = line.get(columns.indexOf(Column.RECORD));
        Fact.Builder fact = Fact.of(FactKind.valueOf(kind.toUpperCase(Locale.ROOT)));
        for (int i = 0; i < columns.size(); i++) {
            fact.with(columns.get(i), SafeCell.read(line.get(i)));
        }
        return fact.build();
    }

    /** What is otherwise than in an earlier sheet, the weightiest first. */
    List<FactChange> since(FactSheet earlier) {
        Map<List<Object>, Fact> before = byKey(earlier.facts);
        List<FactChange> changes = new ArrayList<>();
        byKey(facts).forEach((key, fact) -> {
            Fact was = before.remove(key);
            if (!fact.equals(was)) {
                changes.add(new FactChange(was, fact));
            }
        });
        before.values().forEach(gone -> changes.add(new FactChange(gone, null)));
        return changes.stream().sorted(FactChange.WEIGHTIEST_FIRST).toList();
    }

    private static Map<List<Object>, Fact> byKey(Collection<Fact> facts) {
        Map<List<Object>, Fact> byKey = new LinkedHashMap<>();
        facts.forEach(fact -> byKey.put(List.of(fact.kind(), fact.key()), fact));
        return byKey;
    }
}
