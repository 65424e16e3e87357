package rollbook.manifest;

import java.io.IOException;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reads the {@code creatorinfo} element: when, where, by whom and with which remark a hash list was written. */
final class MhlCreatorReader {
    private final XmlCursor xml;
    private final MhlBudget budget;
    private final List<MhlAuthor> authors = new ArrayList<>();
    private boolean dated;
    private @Nullable Instant created;
    private @Nullable String host;
    private @Nullable String tool;
    private @Nullable String toolVersion;
    private @Nullable String location;
    private @Nullable String comment;

    MhlCreatorReader(XmlCursor xml, MhlBudget budget) {
        this.xml = xml;
        this.budget = budget;
    }

    void read() throws IOException, ManifestException {
        while (xml.nextElement()) {
            switch (xml.namespace().equals(AscMhlReader.NAMESPACE) ? xml.localName() : "") {
                case "creationdate" -> readDate(xml.text().strip());
                case "hostname" -> host = xml.text();
                case "tool" -> {
                    toolVersion = xml.attribute("version");
                    tool = xml.text();
                }
                case "author" -> readAuthor();
                case "location" -> location = xml.text();
                case "comment" -> comment = xml.text();
                default -> throw xml.problem(ManifestProblem.MHL_UNKNOWN_ELEMENT, xml.localName(), "creatorinfo");
            }
        }
    }

    /** The schema allows a date without a zone; it names no instant and is left out. */
    private void readDate(String text) throws ManifestException {
        dated = true;
        try {
            created = XmlDate.instant(text);
        } catch (DateTimeException e) {
            throw xml.problem(ManifestProblem.MHL_VALUE, "creationdate", text);
        }
    }

    private void readAuthor() throws IOException, ManifestException {
        String email = xml.attribute("email");
        String phone = xml.attribute("phone");
        String role = xml.attribute("role");
        MhlAuthor author = new MhlAuthor(xml.text(), email, phone, role);
        budget.spend(author.name(), email, phone, role);
        authors.add(author);
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

    @Nullable
    String tool() {
        return tool;
    }

    @Nullable
    String toolVersion() {
        return toolVersion;
    }

    List<MhlAuthor> authors() {
        return authors;
    }

    @Nullable
    String location() {
        return location;
    }
}
