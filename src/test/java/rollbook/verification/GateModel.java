package rollbook.verification;

import java.util.Arrays;
import java.util.StringJoiner;
import rollbook.inventory.CardState;
import rollbook.inventory.Condition;
import rollbook.verification.GateRoll.Asked;
import rollbook.verification.GateRoll.Cleared;
import rollbook.verification.GateRoll.Judged;

/**
 * One card, the rolls it holds one after the other, three media for their copies, and two people: the life of a
 * clearance, small enough to try every order of acts. It follows what {@link Clearances}, {@link RollJudge} and their
 * neighbours do, and asks the portal's own {@link Proof} and {@link ClearingGate} what holds the card.
 *
 * <p>What a person submits is checked when it is submitted; so every act is tried in every state, whatever page it was
 * that the person had opened before. Only where a form carries something that the person saw, it is part of the state.
 */
final class GateModel {
    static final int ROLLS = 2;
    static final int PEOPLE = 2;
    static final int DOCUMENTS = 5;

    /** Two drives on the set, and a tape at a place off-site. */
    static final int MEDIA = 3;

    static final int TAPE = 2;
    static final int CARD = 3;
    static final int NOTHING = 4;
    static final int NO_MEDIUM = 3;

    static final int WHOLE = 1;
    static final int OTHER_BYTES = 2;
    static final int SHORT = 3;

    static final int WORDS = 4;

    private static final int MOST_REVISIONS = 3;
    private static final CardState[] CARD_STATES = CardState.values();
    private static final Condition[] CONDITIONS = Condition.values();
    private static final int NO_VIEW = 15;

    final GateRoll[] rolls = {new GateRoll(), new GateRoll()};
    final Condition[] conditions = new Condition[MEDIA];
    private final int[] viewed = new int[PEOPLE];
    private final int[] revisionViewed = new int[PEOPLE];
    private final GateProof proof;
    private final GateBits bits = new GateBits(new long[WORDS]);

    GatePolicy policy;
    CardState card = CardState.BLANK;
    /** How many rolls the card has held. */
    int loadings;

    GateModel(GatePolicy policy, GateProof proof) {
        this.policy = policy;
        this.proof = proof;
        Arrays.fill(conditions, Condition.GOOD);
        Arrays.fill(viewed, NO_VIEW);
    }

    /** Everything that makes this state another one than others. */
    long[] state() {
        bits.clear();
        bits.put(policy.ordinal(), 3);
        bits.put(card.ordinal(), 3);
        bits.put(loadings, 2);
        for (Condition condition : conditions) {
            bits.put(condition.ordinal(), 3);
        }
        for (int person = 0; person < PEOPLE; person++) {
            bits.put(viewed[person], 4);
            bits.put(revisionViewed[person], 2);
        }
        for (GateRoll roll : rolls) {
            roll.write(bits);
        }
        return bits.words;
    }

    void become(long[] state) {
        System.arraycopy(state, 0, bits.words, 0, WORDS);
        bits.rewind();
        policy = GatePolicy.ALL[bits.take(3)];
        card = CARD_STATES[bits.take(3)];
        loadings = bits.take(2);
        for (int medium = 0; medium < MEDIA; medium++) {
            conditions[medium] = CONDITIONS[bits.take(3)];
        }
        for (int person = 0; person < PEOPLE; person++) {
            viewed[person] = bits.take(4);
            revisionViewed[person] = bits.take(2);
        }
        for (GateRoll roll : rolls) {
            roll.read(bits);
        }
    }

    /** What of the state stands in the portal's tables. */
    String told() {
        StringJoiner told = new StringJoiner("; ");
        told.add(card.name());
        told.add(conditions[0] + " " + conditions[1] + " " + conditions[2]);
        for (int roll = 0; roll < loadings; roll++) {
            told.add(rolls[roll].judgedInWords());
            told.add(rolls[roll].told());
        }
        return told.toString();
    }

    /** Whether there is somebody or something to do it and something to do it to; it may be refused all the same. */
    boolean possible(GateAct act) {
        GateRoll roll = rolls[act.roll()];
        boolean there = act.roll() < loadings;
        return switch (act.kind()) {
            case UPLOAD, SEND -> there && roll.documents() < DOCUMENTS;
            case READ -> roll.content[act.document()] != 0 && !roll.read[act.document()];
            case JUDGE -> roll.judgingOrdered;
            case LOOK ->
                roll.read[act.document()]
                        && (viewed[act.person()] != view(act)
                                || revisionViewed[act.person()] != roll.revision[act.document()]);
            case CORRECT -> viewed[act.person()] != NO_VIEW && canBeSaid(act.person());
            case ADD ->
                viewed[act.person()] != NO_VIEW
                        && canBeSaid(act.person())
                        && viewedRoll(act.person()).added[viewedDocument(act.person())] == NO_MEDIUM;
            case LOAD -> loadings < ROLLS;
            case APPROVE, TAKE_BACK -> roll.asked != Asked.NEVER;
            case PULL, START_OFFLOAD, FINISH_OFFLOAD, CLEAR, ASK, ERASE -> there;
            case QUARANTINE, RELEASE, LOSE, FIND, CHANGE_POLICY -> true;
        };
    }

    /** Does it, if the portal would. @return whether it was done; if not, nothing has changed */
    boolean apply(GateAct act) {
        return switch (act.kind()) {
            case UPLOAD -> upload(rolls[act.roll()], act);
            case SEND -> upload(rolls[act.roll()], act) && read(rolls[act.roll()], rolls[act.roll()].documents() - 1);
            case READ -> read(rolls[act.roll()], act.document());
            case JUDGE -> judge(rolls[act.roll()]);
            case LOOK -> look(act);
            case CORRECT -> correct(act);
            case ADD -> add(act);
            case CLEAR -> clear(act.roll());
            case ASK -> ask(act.roll(), act.person());
            case APPROVE -> approve(act.roll(), act.person());
            case TAKE_BACK -> takeBack(rolls[act.roll()]);
            case ERASE -> erase(act.roll());
            case LOAD -> load();
            case PULL -> pull(act.roll());
            case START_OFFLOAD -> startOffload(act.roll(), act.target());
            case FINISH_OFFLOAD -> finishOffload(act.roll());
            case QUARANTINE -> doubt(act.target(), Condition.QUARANTINED, Condition.GOOD);
            case RELEASE -> doubt(act.target(), Condition.GOOD, Condition.QUARANTINED);
            case LOSE -> doubt(act.target(), Condition.LOST, Condition.GOOD, Condition.QUARANTINED);
            case FIND -> doubt(act.target(), Condition.QUARANTINED, Condition.LOST);
            case CHANGE_POLICY -> changePolicy();
        };
    }

    private boolean canBeSaid(int person) {
        return viewedRoll(person).revision[viewedDocument(person)] < MOST_REVISIONS;
    }

    boolean onCard(int roll) {
        return roll == loadings - 1 && card != CardState.BLANK;
    }

    /** A document that isn't read yet, or a judging that hasn't been done, may speak of what the clearance relies on. */
    boolean unjudged(int ofRoll) {
        return rolls[ofRoll].judgingOrdered || unread(rolls[ofRoll]);
    }

    private boolean unread(GateRoll ofRoll) {
        for (GateRoll roll : rolls) {
            for (int document = 0; document < roll.documents(); document++) {
                int said = roll.subject[document];
                if (!roll.read[document] && (said == CARD || ofRoll.hasCopyOn(said))) {
                    return true;
                }
            }
        }
        return false;
    }

    private boolean upload(GateRoll roll, GateAct act) {
        int document = roll.documents();
        roll.content[document] = act.content();
        roll.subject[document] = act.target();
        return true;
    }

    private boolean read(GateRoll roll, int document) {
        roll.read[document] = true;
        describe(roll, roll.subject[document]);
        return true;
    }

    /** A copy that nobody logged is made up once a document describes it; any document may speak of it. */
    private static void describe(GateRoll roll, int subject) {
        if (subject < MEDIA && !roll.hasCopyOn(subject)) {
            roll.documentsBefore[subject] = 0;
        }
        roll.judgingOrdered = true;
    }

    private boolean look(GateAct act) {
        viewed[act.person()] = view(act);
        revisionViewed[act.person()] = rolls[act.roll()].revision[act.document()];
        return true;
    }

    private static int view(GateAct act) {
        return act.roll() * DOCUMENTS + act.document();
    }

    private GateRoll viewedRoll(int person) {
        return rolls[viewed[person] / DOCUMENTS];
    }

    int viewedDocument(int person) {
        return viewed[person] % DOCUMENTS;
    }

    int viewedRollNumber(int person) {
        return viewed[person] / DOCUMENTS;
    }

    private boolean correct(GateAct act) {
        GateRoll roll = viewedRoll(act.person());
        int document = viewedDocument(act.person());
        boolean repeats =
                roll.subject[document] == act.target() || act.target() < MEDIA && roll.added[document] == act.target();
        if (roll.revision[document] != revisionViewed[act.person()] || repeats) {
            return false;
        }
        roll.subject[document] = act.target();
        roll.revision[document]++;
        describe(roll, act.target());
        return true;
    }

    private boolean add(GateAct act) {
        GateRoll roll = viewedRoll(act.person());
        int document = viewedDocument(act.person());
        if (roll.revision[document] != revisionViewed[act.person()] || roll.describesCopy(document, act.target())) {
            return false;
        }
        roll.added[document] = act.target();
        roll.revision[document]++;
        describe(roll, act.target());
        return true;
    }

    private boolean judge(GateRoll roll) {
        for (int medium = 0; medium < MEDIA; medium++) {
            if (roll.hasCopyOn(medium)) {
                roll.judged[medium] = GateJudgement.of(roll, medium);
            }
        }
        roll.judgingOrdered = false;
        lookAgain(roll);
        return true;
    }

    private void lookAgain(GateRoll roll) {
        if (roll.cleared != Cleared.STANDS && roll.cleared != Cleared.ERASED) {
            return;
        }
        int lost = proof.lost(this, roll, roll.reliedOn);
        if (roll.cleared == Cleared.ERASED) {
            roll.alarmedAfter |= lost;
            return;
        }
        roll.alarmedBefore |= lost;
        if (!roll.withoutProof && proof.holds(this, roll) != 0) {
            roll.cleared = Cleared.WITHDRAWN;
            card = CardState.HELD;
        }
    }

    private boolean clear(int number) {
        GateRoll roll = rolls[number];
        if (roll.cleared == Cleared.STANDS
                || !onCard(number)
                || unjudged(number)
                || proof.holds(this, roll) != 0
                || card != CardState.HELD) {
            return false;
        }
        grant(roll, false);
        return true;
    }

    private void grant(GateRoll roll, boolean withoutProof) {
        card = CardState.CLEAR_TO_ERASE;
        roll.cleared = Cleared.STANDS;
        roll.withoutProof = withoutProof;
        roll.reliedOn = proof.counting(this, roll);
    }

    private boolean ask(int number, int person) {
        GateRoll roll = rolls[number];
        int holds = proof.holds(this, roll);
        if (!onCard(number) || card != CardState.HELD || roll.asked == Asked.WAITS || holds == 0) {
            return false;
        }
        roll.asked = Asked.WAITS;
        roll.askedBy = person;
        roll.holdsAsked = holds;
        return true;
    }

    private boolean approve(int number, int person) {
        GateRoll roll = rolls[number];
        if (roll.asked != Asked.WAITS
                || roll.askedBy == person
                || !onCard(number)
                || card != CardState.HELD
                || unjudged(number)
                || !isAsAsked(roll)) {
            return false;
        }
        roll.asked = Asked.APPROVED;
        grant(roll, true);
        return true;
    }

    /** Whether what holds the card is what held it when somebody asked. */
    boolean isAsAsked(GateRoll roll) {
        return proof.holds(this, roll) == roll.holdsAsked;
    }

    private boolean takeBack(GateRoll roll) {
        if (roll.asked == Asked.WITHDRAWN || roll.asked == Asked.APPROVED && roll.cleared == Cleared.ERASED) {
            return false;
        }
        if (roll.asked == Asked.APPROVED) {
            roll.cleared = Cleared.WITHDRAWN;
            card = CardState.HELD;
        }
        roll.asked = Asked.WITHDRAWN;
        return true;
    }

    private boolean erase(int number) {
        GateRoll roll = rolls[number];
        if (roll.cleared != Cleared.STANDS
                || !roll.withoutProof && (unjudged(number) || proof.holds(this, roll) != 0)
                || card != CardState.CLEAR_TO_ERASE) {
            return false;
        }
        card = CardState.BLANK;
        roll.cleared = Cleared.ERASED;
        return true;
    }

    private boolean load() {
        if (card != CardState.BLANK) {
            return false;
        }
        card = CardState.IN_CAMERA;
        loadings++;
        return true;
    }

    private boolean pull(int roll) {
        if (!onCard(roll) || card != CardState.IN_CAMERA) {
            return false;
        }
        card = CardState.EXPOSED;
        return true;
    }

    private boolean startOffload(int number, int media) {
        GateRoll roll = rolls[number];
        if (!onCard(number) || card != CardState.EXPOSED && card != CardState.HELD) {
            return false;
        }
        for (int medium = 0; medium < MEDIA; medium++) {
            if ((media & 1 << medium) != 0 && conditions[medium] != Condition.GOOD) {
                return false;
            }
        }
        card = CardState.COPYING;
        for (int medium = 0; medium < MEDIA; medium++) {
            if ((media & 1 << medium) != 0) {
                roll.documentsBefore[medium] = roll.documents();
                roll.judged[medium] = roll.judged[medium] == Judged.NEVER ? Judged.NEVER : Judged.UNKNOWN;
            }
        }
        return true;
    }

    private boolean finishOffload(int roll) {
        if (!onCard(roll) || card != CardState.COPYING) {
            return false;
        }
        card = CardState.HELD;
        return true;
    }

    private boolean doubt(int medium, Condition to, Condition... from) {
        if (!Arrays.asList(from).contains(conditions[medium])) {
            return false;
        }
        conditions[medium] = to;
        for (GateRoll roll : rolls) {
            roll.judgingOrdered |= card == CardState.CLEAR_TO_ERASE && roll.hasCopyOn(medium);
        }
        return true;
    }

    private boolean changePolicy() {
        policy = policy.next();
        for (int roll = 0; roll < loadings; roll++) {
            rolls[roll].judgingOrdered |= card == CardState.CLEAR_TO_ERASE;
        }
        return true;
    }
}
