package rollbook.verification;

import java.util.ArrayList;
import java.util.List;
import org.springframework.stereotype.Component;
import rollbook.manifest.ArchiveFinding;
import rollbook.manifest.ArchiveMember;
import rollbook.manifest.ChecksumAlgorithm;
import rollbook.web.Display;

/** The sentences that answer what the pages of documents are asked. */
@Component
class DocumentSentences {
    private final Display display;

    DocumentSentences(Display display) {
        this.display = display;
    }

    /** @param unfinished files that the reader began to send */
    String list(DocumentList.Counts counts, boolean maySay, int unfinished) {
        List<String> sentences = new ArrayList<>();
        if (unfinished > 0) {
            sentences.add(display.text("verification.uploads.sentence", unfinished));
        }
        if (counts.all() == 0) {
            sentences.add(display.text("verification.documents.sentence.none"));
            return String.join(" ", sentences);
        }
        if (counts.waitingForPeople() > 0) {
            sentences.add(
                    maySay
                            ? display.text("verification.documents.sentence.waiting", counts.waitingForPeople())
                            : display.text(
                                    "verification.documents.sentence.waiting-others", counts.waitingForPeople()));
        } else {
            sentences.add(display.text("verification.documents.sentence.nothing-waits"));
        }
        if (counts.beingRead() > 0) {
            sentences.add(display.text("verification.documents.sentence.being-read", counts.beingRead()));
        }
        if (counts.rejectedLately() > 0) {
            sentences.add(display.text("verification.documents.sentence.rejected", counts.rejectedLately()));
        }
        return String.join(" ", sentences);
    }

    String delivery(List<DeliveredFile> files) {
        List<String> sentences = new ArrayList<>();
        long stored = count(files, DeliveredFile.Outcome.STORED);
        long here = count(files, DeliveredFile.Outcome.HERE);
        long empty = count(files, DeliveredFile.Outcome.EMPTY);
        if (stored > 0) {
            sentences.add(display.text("verification.documents.told.stored", stored));
        }
        if (here > 0) {
            sentences.add(display.text("verification.documents.told.here", here));
        }
        if (empty > 0) {
            sentences.add(display.text("verification.documents.told.empty", empty));
        }
        long rejected = files.stream().filter(DeliveredFile::rejected).count();
        if (rejected > 0) {
            sentences.add(display.text("verification.documents.told.rejected", rejected));
        }
        long waiting = files.stream().filter(file -> file.unassigned() > 0).count();
        if (waiting > 0) {
            sentences.add(display.text("verification.documents.told.waiting", waiting));
        }
        return String.join(" ", sentences);
    }

    private static long count(List<DeliveredFile> files, DeliveredFile.Outcome outcome) {
        return files.stream().filter(file -> file.outcome() == outcome).count();
    }

    String document(Document document) {
        return switch (document.standing()) {
            case BEING_READ ->
                document.state() == Document.State.WAITING
                        ? display.text("verification.document.sentence.waiting")
                        : display.text("verification.document.sentence.being-read", progress(document));
            case REJECTED -> rejected(document);
            case WAITS_FOR_PEOPLE ->
                display.text("verification.document.sentence.waits", document.unassigned(), document.parts());
            case ASSIGNED ->
                refersOnly(document)
                        ? display.text("verification.document.sentence.refers", document.hashLists())
                        : display.text("verification.document.sentence.assigned", document.entries(), document.parts());
        };
    }

    /** Lawful for a folder that holds nothing but folders with histories of their own. */
    private static boolean refersOnly(Document document) {
        return document.parts() == 0 && document.hashLists() != null && document.hashLists() > 0;
    }

    private String rejected(Document document) {
        if (document.problem() == null) {
            return display.text("verification.document.sentence.fault");
        }
        return document.problemLine() == null
                ? display.text("verification.document.sentence.rejected-whole", reason(document))
                : display.text("verification.document.sentence.rejected", place(document), reason(document));
    }

    String archive(ArchivePage archive) {
        if (archive.count() == 0) {
            return display.text("verification.archive.sentence.none");
        }
        List<String> sentences = new ArrayList<>();
        sentences.add(display.text("verification.archive.sentence.holds", archive.count()));
        for (ArchiveMember.State state : ArchiveMember.State.values()) {
            if (state != ArchiveMember.State.GOOD && archive.count(state) > 0) {
                sentences.add(display.text("verification.archive.sentence." + state.name(), archive.count(state)));
            }
        }
        if (archive.count(ArchiveMember.State.GOOD) == archive.count()) {
            sentences.add(display.text("verification.archive.sentence.GOOD"));
        }
        if (archive.unassigned() > 0) {
            sentences.add(display.text("verification.archive.sentence.waits", archive.unassigned()));
        }
        return String.join(" ", sentences);
    }

    /** What was found about an archive, in words. */
    public String finding(ArchiveFinding finding) {
        return display.text(finding.messageKey(), finding.arguments().toArray());
    }

    /** Why a document was rejected, in words; empty if it wasn't. */
    public String reason(Document document) {
        return document.problem() == null
                ? ""
                : display.text(
                        document.problem().messageKey(), document.problemArgs().toArray());
    }

    public String advice(Document document) {
        return document.problem() == null ? "" : display.text(document.problem().adviceKey());
    }

    private String place(Document document) {
        return display.text(
                "verification.document.place",
                document.problemLine() == null ? 0 : document.problemLine(),
                document.problemColumn() == null ? 0 : document.problemColumn());
    }

    /** What has to be said of the document's digests, a question for each of their lengths. */
    public List<String> questions(Document document) {
        return document.askedDigits().stream().map(this::question).toList();
    }

    public String question(int digits) {
        List<ChecksumAlgorithm> choices = ChecksumAlgorithm.ofHexDigits(digits);
        return display.text(
                "verification.algorithm.question",
                digits,
                choices.get(0).label(),
                choices.get(1).label());
    }

    public String progress(Document document) {
        return display.text(
                "verification.documents.progress",
                display.size(document.bytesRead()),
                display.size(document.sizeBytes()),
                document.entries());
    }
}
