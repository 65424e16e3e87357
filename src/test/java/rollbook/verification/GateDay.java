package rollbook.verification;

import java.util.ArrayList;
import java.util.List;
import rollbook.verification.GateAct.Kind;

/** How days go: a card is loaded, pulled, copied, proven, cleared, erased and loaded again; or something goes wrong. */
final class GateDay {
    static final List<List<GateAct>> ALL = List.of(usual(), unlucky(), withoutSource(), writtenAgain());

    private GateDay() {}

    /** All is proven. */
    static List<GateAct> usual() {
        List<GateAct> acts = new ArrayList<>(copied(0));
        sent(acts, GateModel.CARD, GateModel.WHOLE);
        sent(acts, 0, GateModel.WHOLE);
        sent(acts, 1, GateModel.WHOLE);
        sent(acts, GateModel.TAPE, GateModel.WHOLE);
        acts.addAll(List.of(GateAct.of(Kind.CLEAR, 0), GateAct.of(Kind.ERASE, 0)));
        acts.addAll(copied(1));
        return acts;
    }

    /** A drive was written wrongly, and two people clear the card all the same. */
    static List<GateAct> unlucky() {
        List<GateAct> acts = new ArrayList<>(copied(0));
        sent(acts, GateModel.CARD, GateModel.WHOLE);
        sent(acts, 0, GateModel.OTHER_BYTES);
        acts.addAll(List.of(GateAct.ask(0, 0), GateAct.approve(1, 0), GateAct.of(Kind.ERASE, 0)));
        acts.addAll(copied(1));
        return acts;
    }

    /** Nobody sends a manifest of the card, and the first list is too short. */
    static List<GateAct> withoutSource() {
        List<GateAct> acts = new ArrayList<>(copied(0));
        sent(acts, 0, GateModel.SHORT);
        sent(acts, 1, GateModel.WHOLE);
        sent(acts, GateModel.TAPE, GateModel.WHOLE);
        sent(acts, 0, GateModel.WHOLE);
        return acts;
    }

    /** Two drives were proven, and are written again; since then only the tape was checked. */
    static List<GateAct> writtenAgain() {
        List<GateAct> acts = new ArrayList<>(copied(0));
        sent(acts, GateModel.CARD, GateModel.WHOLE);
        sent(acts, 0, GateModel.WHOLE);
        sent(acts, 1, GateModel.WHOLE);
        acts.addAll(List.of(GateAct.startOffload(0, 0b011), GateAct.of(Kind.FINISH_OFFLOAD, 0)));
        sent(acts, GateModel.TAPE, GateModel.WHOLE);
        return acts;
    }

    private static List<GateAct> copied(int roll) {
        return List.of(
                GateAct.of(Kind.LOAD, 0),
                GateAct.of(Kind.PULL, roll),
                GateAct.startOffload(roll, 0b011),
                GateAct.of(Kind.FINISH_OFFLOAD, roll));
    }

    private static void sent(List<GateAct> acts, int about, int content) {
        acts.addAll(List.of(GateAct.send(0, about, content), GateAct.of(Kind.JUDGE, 0)));
    }

    /** Every state that such days go through, under every policy. */
    static List<long[]> states(GateProof proof) {
        List<long[]> states = new ArrayList<>();
        for (GatePolicy policy : GatePolicy.ALL) {
            for (List<GateAct> day : ALL) {
                GateModel model = new GateModel(policy, proof);
                states.add(model.state().clone());
                for (GateAct act : day) {
                    if (!model.possible(act) || !model.apply(act)) {
                        throw new AssertionError(policy + ": a day can’t go on with: " + act);
                    }
                    states.add(model.state().clone());
                }
            }
        }
        return states;
    }
}
