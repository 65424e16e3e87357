package rollbook.verification;

import java.util.ArrayList;
import java.util.List;

/**
 * Something that one of two people, or a background job, tries to do.
 *
 * @param person 0 or 1; 0 too where it makes no difference who it is
 * @param roll 0 for the card's first roll, 1 for the one after it was loaded again
 * @param document by its place in the order of upload
 * @param target a medium by its number, or one of the constants of {@link GateModel}
 * @param content what a document that is uploaded lists
 */
record GateAct(Kind kind, int person, int roll, int document, int target, int content) {
    /** Every act that can be tried at all, in whatever state. */
    static final List<GateAct> ALL = all();

    enum Kind {
        /** Sends a list in an archive, which a job has to open and read. */
        UPLOAD,
        /** Sends a list by itself, which is read while it arrives. */
        SEND,
        READ,
        JUDGE,
        /** Opens the page of a document, which then shows what was said of it so far. */
        LOOK,
        /** Says from that page, perhaps much later, that the document describes something else. */
        CORRECT,
        /** Says from that page that the document describes something besides. */
        ADD,
        CLEAR,
        /** Asks to clear the card without proof. */
        ASK,
        APPROVE,
        /** Takes the request back, or the clearance that came of it. */
        TAKE_BACK,
        ERASE,
        LOAD,
        PULL,
        START_OFFLOAD,
        FINISH_OFFLOAD,
        QUARANTINE,
        RELEASE,
        LOSE,
        FIND,
        CHANGE_POLICY
    }

    private static GateAct of(Kind kind) {
        return new GateAct(kind, 0, 0, 0, 0, 0);
    }

    static GateAct of(Kind kind, int roll) {
        return new GateAct(kind, 0, roll, 0, 0, 0);
    }

    static GateAct upload(int roll, int target, int content) {
        return new GateAct(Kind.UPLOAD, 0, roll, 0, target, content);
    }

    static GateAct send(int roll, int target, int content) {
        return new GateAct(Kind.SEND, 0, roll, 0, target, content);
    }

    static GateAct read(int roll, int document) {
        return new GateAct(Kind.READ, 0, roll, document, 0, 0);
    }

    static GateAct startOffload(int roll, int media) {
        return new GateAct(Kind.START_OFFLOAD, 0, roll, 0, media, 0);
    }

    static GateAct ask(int person, int roll) {
        return new GateAct(Kind.ASK, person, roll, 0, 0, 0);
    }

    static GateAct approve(int person, int roll) {
        return new GateAct(Kind.APPROVE, person, roll, 0, 0, 0);
    }

    private static List<GateAct> all() {
        List<GateAct> acts = new ArrayList<>(List.of(of(Kind.LOAD), of(Kind.CHANGE_POLICY)));
        for (int roll = 0; roll < GateModel.ROLLS; roll++) {
            ofRoll(roll, acts);
        }
        for (int medium = 0; medium < GateModel.MEDIA; medium++) {
            for (Kind kind : List.of(Kind.QUARANTINE, Kind.RELEASE, Kind.LOSE, Kind.FIND)) {
                acts.add(new GateAct(kind, 0, 0, 0, medium, 0));
            }
        }
        for (int person = 0; person < GateModel.PEOPLE; person++) {
            ofPerson(person, acts);
        }
        return List.copyOf(acts);
    }

    private static void ofRoll(int roll, List<GateAct> acts) {
        for (Kind kind : List.of(Kind.PULL, Kind.FINISH_OFFLOAD, Kind.JUDGE, Kind.CLEAR, Kind.ERASE, Kind.TAKE_BACK)) {
            acts.add(of(kind, roll));
        }
        acts.add(startOffload(roll, 0b011));
        acts.add(startOffload(roll, 0b100));
        for (int target = 0; target <= GateModel.CARD; target++) {
            for (int content = GateModel.WHOLE; content <= GateModel.SHORT; content++) {
                acts.add(send(roll, target, content));
            }
            acts.add(upload(roll, target, GateModel.WHOLE));
            acts.add(upload(roll, target, GateModel.OTHER_BYTES));
        }
        for (int document = 0; document < GateModel.DOCUMENTS; document++) {
            acts.add(read(roll, document));
        }
    }

    private static void ofPerson(int person, List<GateAct> acts) {
        for (int roll = 0; roll < GateModel.ROLLS; roll++) {
            acts.add(ask(person, roll));
            acts.add(approve(person, roll));
            for (int document = 0; document < GateModel.DOCUMENTS; document++) {
                acts.add(new GateAct(Kind.LOOK, person, roll, document, 0, 0));
            }
        }
        for (int target = 0; target <= GateModel.NOTHING; target++) {
            acts.add(new GateAct(Kind.CORRECT, person, 0, 0, target, 0));
        }
        for (int medium = 0; medium < GateModel.MEDIA; medium++) {
            acts.add(new GateAct(Kind.ADD, person, 0, 0, medium, 0));
        }
    }

    @Override
    public String toString() {
        return switch (kind) {
            case UPLOAD, SEND -> "%s to roll %d a list %s about %s".formatted(kind, roll, contentName(), targetName());
            case READ -> "read document %d of roll %d".formatted(document, roll);
            case LOOK -> "person %d looks at document %d of roll %d".formatted(person, document, roll);
            case CORRECT -> "person %d corrects it to %s".formatted(person, targetName());
            case ASK, APPROVE -> "person %d: %s roll %d".formatted(person, kind, roll);
            case ADD -> "person %d adds %s".formatted(person, targetName());
            case START_OFFLOAD ->
                "start offload of roll %d to media %s".formatted(roll, Integer.toBinaryString(target));
            case QUARANTINE, RELEASE, LOSE, FIND -> kind + " medium " + target;
            case LOAD, CHANGE_POLICY -> kind.toString();
            default -> kind + " roll " + roll;
        };
    }

    private String targetName() {
        return target == GateModel.CARD ? "the card" : target == GateModel.NOTHING ? "nothing" : "medium " + target;
    }

    private String contentName() {
        return content == GateModel.WHOLE
                ? "as the card’s"
                : content == GateModel.OTHER_BYTES ? "with other bytes" : "too short";
    }
}
