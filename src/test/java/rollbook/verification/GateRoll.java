package rollbook.verification;

import java.util.Arrays;
import java.util.StringJoiner;

/** What is known of one roll of the model: its documents in the order of upload, its copies, verdicts and clearance. */
final class GateRoll {
    /** What a copy's newest verdict says, and of what is consistent also why. */
    enum Judged {
        NEVER,
        UNKNOWN,
        PROVEN,
        CONSISTENT,
        /** Nothing speaks against it but that there is no manifest of the card. */
        WITHOUT_SOURCE,
        /** The same, and it lists files that what it is compared with hasn't. */
        MORE_WITHOUT_SOURCE,
        /** As without source, and its own document is what the others are compared with. */
        REFERENCE_WITHOUT_SOURCE,
        INCOMPLETE,
        FAILED
    }

    /** What became of the newest clearance. */
    enum Cleared {
        NEVER,
        STANDS,
        WITHDRAWN,
        ERASED
    }

    enum Asked {
        NEVER,
        WAITS,
        APPROVED,
        WITHDRAWN
    }

    static final Asked[] ASKED = Asked.values();
    static final Judged[] JUDGED = Judged.values();
    static final Cleared[] CLEARED = Cleared.values();
    static final int NO_COPY = -1;
    private static final int HOLDS_BITS = 11;

    /** What each document lists; 0 for none, documents have no gaps. */
    final int[] content = new int[GateModel.DOCUMENTS];
    /** What each was said to describe. */
    final int[] subject = new int[GateModel.DOCUMENTS];
    /** Another medium whose copy it was said to describe besides, or {@link GateModel#NO_MEDIUM}. */
    final int[] added = new int[GateModel.DOCUMENTS];

    final boolean[] read = new boolean[GateModel.DOCUMENTS];
    /** How often it was said since it was read what the document describes. */
    final int[] revision = new int[GateModel.DOCUMENTS];
    /** How many documents were there when the last writing of each medium's copy began. */
    final int[] documentsBefore = new int[GateModel.MEDIA];

    final Judged[] judged = new Judged[GateModel.MEDIA];
    /** Whether a job waits that will judge the copies. */
    boolean judgingOrdered;

    Cleared cleared = Cleared.NEVER;
    /** The media whose copies the newest clearance relied on, a bit each. */
    int reliedOn;
    /** The media whose copies fell after they were relied on, before and after the erasure, a bit each. */
    int alarmedBefore;

    int alarmedAfter;

    /** What became of the newest request to clear the card without proof, who asked, and what held the card then. */
    Asked asked = Asked.NEVER;

    int askedBy;
    int holdsAsked;
    /** Whether the newest clearance came of it. */
    boolean withoutProof;

    GateRoll() {
        Arrays.fill(added, GateModel.NO_MEDIUM);
        Arrays.fill(documentsBefore, NO_COPY);
        Arrays.fill(judged, Judged.NEVER);
    }

    int documents() {
        int number = 0;
        while (number < content.length && content[number] != 0) {
            number++;
        }
        return number;
    }

    boolean hasCopyOn(int medium) {
        return documentsBefore[medium] != NO_COPY;
    }

    boolean describesCard(int document) {
        return subject[document] == GateModel.CARD;
    }

    boolean describesCopy(int document, int medium) {
        return subject[document] == medium || added[document] == medium;
    }

    String judgedInWords() {
        StringJoiner words = new StringJoiner(" ");
        for (int medium = 0; medium < GateModel.MEDIA; medium++) {
            words.add(hasCopyOn(medium) ? judged[medium].name() : "-");
        }
        return words.toString();
    }

    String told() {
        return told(judgingOrdered, cleared, withoutProof, reliedOn, alarmedBefore, alarmedAfter, asked);
    }

    static String told(
            boolean judgingOrdered,
            Cleared cleared,
            boolean withoutProof,
            int reliedOn,
            int alarmedBefore,
            int alarmedAfter,
            Asked asked) {
        return (judgingOrdered ? "to be judged, " : "")
                + "clearance %s%s relied on %s, alarms %s and %s, request %s"
                        .formatted(
                                cleared,
                                withoutProof ? " without proof" : "",
                                Integer.toBinaryString(reliedOn),
                                Integer.toBinaryString(alarmedBefore),
                                Integer.toBinaryString(alarmedAfter),
                                asked);
    }

    void write(GateBits bits) {
        for (int document = 0; document < content.length; document++) {
            bits.put(content[document], 2);
            bits.put(subject[document], 3);
            bits.put(added[document], 2);
            bits.put(read[document] ? 1 : 0, 1);
            bits.put(revision[document], 2);
        }
        for (int medium = 0; medium < GateModel.MEDIA; medium++) {
            bits.put(documentsBefore[medium] + 1, 3);
            bits.put(judged[medium].ordinal(), 4);
        }
        bits.put(judgingOrdered ? 1 : 0, 1);
        bits.put(cleared.ordinal(), 2);
        bits.put(reliedOn, GateModel.MEDIA);
        bits.put(alarmedBefore, GateModel.MEDIA);
        bits.put(alarmedAfter, GateModel.MEDIA);
        bits.put(asked.ordinal(), 2);
        bits.put(askedBy, 1);
        bits.put(holdsAsked, HOLDS_BITS);
        bits.put(withoutProof ? 1 : 0, 1);
    }

    void read(GateBits bits) {
        for (int document = 0; document < content.length; document++) {
            content[document] = bits.take(2);
            subject[document] = bits.take(3);
            added[document] = bits.take(2);
            read[document] = bits.take(1) == 1;
            revision[document] = bits.take(2);
        }
        for (int medium = 0; medium < GateModel.MEDIA; medium++) {
            documentsBefore[medium] = bits.take(3) - 1;
            judged[medium] = JUDGED[bits.take(4)];
        }
        judgingOrdered = bits.take(1) == 1;
        cleared = CLEARED[bits.take(2)];
        reliedOn = bits.take(GateModel.MEDIA);
        alarmedBefore = bits.take(GateModel.MEDIA);
        alarmedAfter = bits.take(GateModel.MEDIA);
        asked = ASKED[bits.take(2)];
        askedBy = bits.take(1);
        holdsAsked = bits.take(HOLDS_BITS);
        withoutProof = bits.take(1) == 1;
    }
}
