package rollbook.verification;

import java.util.ArrayList;
import java.util.List;
import rollbook.verification.GateAct.Kind;

/** How a day usually goes: the card is loaded, pulled, copied and proven, cleared, erased and loaded again. */
final class GateDay {
    private GateDay() {}

    /** The acts in their order; what is read is judged at once. */
    static List<GateAct> acts() {
        List<GateAct> acts = new ArrayList<>(List.of(
                GateAct.ALL.get(0),
                GateAct.of(Kind.PULL, 0),
                GateAct.startOffload(0, 0b011),
                GateAct.of(Kind.FINISH_OFFLOAD, 0)));
        List.of(GateModel.CARD, 0, 1, GateModel.TAPE).forEach(subject -> {
            acts.add(GateAct.upload(0, subject, GateModel.WHOLE));
            acts.add(GateAct.read(0, acts.size() / 3 - 1));
            acts.add(GateAct.of(Kind.JUDGE, 0));
        });
        acts.addAll(List.of(
                GateAct.of(Kind.CLEAR, 0),
                GateAct.of(Kind.ERASE, 0),
                GateAct.ALL.get(0),
                GateAct.of(Kind.PULL, 1),
                GateAct.startOffload(1, 0b011),
                GateAct.of(Kind.FINISH_OFFLOAD, 1)));
        return acts;
    }

    /** Every state that such a day goes through, under every policy. */
    static List<long[]> states(GateProof proof) {
        List<long[]> states = new ArrayList<>();
        for (GatePolicy policy : GatePolicy.ALL) {
            GateModel model = new GateModel(policy, proof);
            states.add(model.state().clone());
            for (GateAct act : acts()) {
                if (!model.possible(act) || !model.apply(act)) {
                    throw new AssertionError(policy + ": the usual day can't go on with: " + act);
                }
                states.add(model.state().clone());
            }
        }
        return states;
    }
}
