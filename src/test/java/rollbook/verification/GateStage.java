package rollbook.verification;

/** Where acts are played that the model has played too: the portal, or one with a fault in it. */
public interface GateStage {
    /** Brings a blank card and three media, under a policy of {@link GatePolicy}. */
    void begin(int policy);

    /**
     * Does an act of {@link GateAct#ALL}.
     *
     * @return whether it was done or refused, and what stands on record then, in the words of {@link GateModel#told}
     */
    String play(int act);

    /** Leaves nothing behind that would wait for a job. */
    void end();
}
