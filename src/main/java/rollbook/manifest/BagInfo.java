package rollbook.manifest;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * What people wrote of a bag in {@code bag-info.txt} (RFC 8493, 2.2.2): labels, which may repeat, and values, in their
 * order.
 *
 * @param malformed lines that are neither a label with its value nor the continuation of one
 */
record BagInfo(List<Line> lines, long malformed) {
    static final BagInfo NONE = new BagInfo(List.of(), 0);
    private static final String OXUM = "Payload-Oxum";
    private static final int MAX_LINES = 1_000;
    private static final int MAX_VALUE = 4_096;

    record Line(String label, String value) {}

    BagInfo {
        lines = List.copyOf(lines);
    }

    static BagInfo read(InputStream in) throws IOException, ManifestException {
        LineReader reader = new LineReader(new BagLines(in));
        List<Line> lines = new ArrayList<>();
        long malformed = 0;
        for (String text = reader.next(); text != null; text = reader.next()) {
            boolean continued = !text.isEmpty() && Character.isWhitespace(text.charAt(0));
            int colon = text.indexOf(':');
            if (continued && !lines.isEmpty()) {
                Line last = lines.remove(lines.size() - 1);
                lines.add(new Line(last.label(), cut(last.value() + " " + text.strip())));
            } else if (!continued && colon > 0 && lines.size() < MAX_LINES) {
                lines.add(new Line(
                        cut(text.substring(0, colon).strip()),
                        cut(text.substring(colon + 1).strip())));
            } else if (!text.isBlank()) {
                malformed++;
            }
        }
        return new BagInfo(lines, malformed);
    }

    /** A value of several lines is continued, as the standard has it; so they come back with a blank in between. */
    void write(OutputStream out) throws IOException {
        StringBuilder text = new StringBuilder();
        for (Line line : lines) {
            if (line.label().isBlank() || line.label().indexOf(':') >= 0) {
                throw new IllegalArgumentException("Not a label: " + line.label());
            }
            text.append(line.label()).append(": ");
            text.append(line.value().strip().replaceAll("\\s*[\\r\\n]+\\s*", "\n  "))
                    .append('\n');
        }
        out.write(text.toString().getBytes(StandardCharsets.UTF_8));
    }

    /** Every size that is given for the payload: octets, a full stop, files. There should be one at most. */
    List<String> oxums() {
        return lines.stream()
                .filter(line -> line.label().equalsIgnoreCase(OXUM))
                .map(Line::value)
                .toList();
    }

    private static String cut(String text) {
        return text.length() <= MAX_VALUE ? text : text.substring(0, MAX_VALUE);
    }
}
