package rollbook.verification;

/** Plays sequences in the model itself. */
final class GateModelStage implements GateStage {
    private final GateProof proof = new GateProof();
    private GateModel model = new GateModel(GatePolicy.TWO_COPIES, proof);

    @Override
    public void begin(int policy) {
        model = new GateModel(GatePolicy.ALL[policy], proof);
    }

    @Override
    public String play(int act) {
        GateAct played = GateAct.ALL.get(act);
        return (model.possible(played) && model.apply(played) ? "done " : "refused ") + model.told();
    }

    @Override
    public void end() {}
}
