package rollbook.verification;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import rollbook.manifest.DirectoryFinding;
import rollbook.manifest.ManifestRemark;
import rollbook.manifest.MhlAuthor;
import rollbook.manifest.MhlDetails;
import rollbook.manifest.MhlReference;

/**
 * Something that a document says beside its files, or that stands out in it.
 *
 * @param message key of its text
 */
record DocumentNote(Kind kind, String message, List<String> arguments) {
    private static final int MOST_OF_A_SORT = 20;
    private static final int MOST_CHARACTERS = 300;

    enum Kind {
        /** What it says of itself. */
        FACT,
        /** What departs from its standard; it proves no less for it. */
        REMARK
    }

    public Object[] filling() {
        return arguments.toArray();
    }

    static List<DocumentNote> of(MhlDetails details) {
        List<DocumentNote> notes = new ArrayList<>();
        for (ManifestRemark remark : details.remarks()) {
            notes.add(
                    counted(Kind.REMARK, remark.kind().messageKey(), remark.count(), remark.line(), remark.example()));
        }
        if (details.tool() != null) {
            notes.add(fact(
                    "verification.note.tool", details.tool(), Objects.requireNonNullElse(details.toolVersion(), "")));
        }
        details.authors().stream().limit(MOST_OF_A_SORT).forEach(author -> notes.add(author(author)));
        if (details.location() != null) {
            notes.add(fact("verification.note.location", details.location()));
        }
        if (!details.scope().ignored().isEmpty()) {
            notes.add(fact(
                    "verification.note.ignored",
                    String.join(", ", details.scope().ignored())));
        }
        details.scope().references().stream()
                .limit(MOST_OF_A_SORT)
                .map(MhlReference::path)
                .forEach(path -> notes.add(fact("verification.note.reference", path)));
        return notes;
    }

    /** One note for each way in which directory hashes came out. */
    static List<DocumentNote> of(List<DirectoryFinding> findings) {
        Map<DirectoryFinding.State, List<DirectoryFinding>> byState = new EnumMap<>(DirectoryFinding.State.class);
        findings.forEach(finding -> byState.computeIfAbsent(finding.state(), state -> new ArrayList<>())
                .add(finding));
        List<DocumentNote> notes = new ArrayList<>();
        byState.forEach((state, found) -> {
            DirectoryFinding first = found.get(0);
            boolean harmless = state == DirectoryFinding.State.EQUAL || state == DirectoryFinding.State.GIVEN;
            String example = (first.path().isEmpty() ? "." : first.path()) + " ("
                    + first.algorithm().label() + ")";
            notes.add(counted(
                    harmless ? Kind.FACT : Kind.REMARK, state.messageKey(), found.size(), first.line(), example));
        });
        return notes;
    }

    private static DocumentNote author(MhlAuthor author) {
        String more = Stream.of(author.role(), author.email(), author.phone())
                .filter(Objects::nonNull)
                .reduce("", (one, other) -> one + ", " + other);
        return fact("verification.note.author", author.name() + more);
    }

    private static DocumentNote counted(Kind kind, String message, long count, long line, String example) {
        return new DocumentNote(kind, message, List.of(Long.toString(count), Long.toString(line), cut(example)));
    }

    private static DocumentNote fact(String message, String... arguments) {
        return new DocumentNote(
                Kind.FACT, message, Stream.of(arguments).map(DocumentNote::cut).toList());
    }

    private static String cut(String text) {
        return text.codePointCount(0, text.length()) <= MOST_CHARACTERS
                ? text
                : text.substring(0, text.offsetByCodePoints(0, MOST_CHARACTERS)) + "…";
    }
}
