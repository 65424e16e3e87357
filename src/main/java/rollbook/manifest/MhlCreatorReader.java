package rollbook.manifest;

import java.io.IOException;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import org.jspecify.annotations.Nullable;

/** Reads the {@code creatorinfo} element: when, where and with which remark a hash list was written. */
final class MhlCreatorReader {
    private final XmlCursor xml;
    private boolean dated;
    private @Nullable Instant created;
    private @Nullable String host;
    private @Nullable String comment;

    MhlCreatorReader(XmlCursor xml) {
        this.xml = xml;
    }

    void read() throws IOException, ManifestException {
        while (xml.nextElement()) {
            switch (xml.namespace().equals(AscMhlReader.NAMESPACE) ? xml.localName() : "") {
                case "creationdate" -> readDate(xml.text().strip());
                case "hostname" -> host = xml.text();
                case "comment" -> comment = xml.text();
                case "tool", "author", "location" -> xml.skip();
                default -> throw xml.problem(ManifestProblem.MHL_UNKNOWN_ELEMENT, xml.localName(), "creatorinfo");
            }
        }
    }

    /** The schema allows a date without a zone; it names no instant and is left out. */
    private void readDate(String text) throws ManifestException {
        dated = true;
        try {
            created = OffsetDateTime.parse(text).toInstant();
        } catch (DateTimeException withoutZone) {
            requireLocalDate(text);
        }
    }

    private void requireLocalDate(String text) throws ManifestException {
        try {
            LocalDateTime.parse(text);
        } catch (DateTimeException e) {
            throw xml.problem(ManifestProblem.MHL_VALUE, "creationdate", text);
        }
    }

    boolean isMissing() {
        return !dated;
    }

    @Nullable
    Instant created() {
        return created;
    }

    @Nullable
    String host() {
        return host;
    }

    @Nullable
    String comment() {
        return comment;
    }
}
