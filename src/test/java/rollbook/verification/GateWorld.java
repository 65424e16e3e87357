package rollbook.verification;

import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationContext;

/** The model and the portal's verification as they are, or, in a class loader of their own, with a fault in them. */
public interface GateWorld {
    /** Explores as {@link GateExploration} does. */
    Explored explore(int mostStates);

    /** The model, to play sequences in. */
    GateStage model();

    /** The portal, to play sequences in. */
    GateStage portal(ApplicationContext context);

    /**
     * @param depth how many acts away from a start every state was tried before the fault showed
     * @param fault null if none was found
     */
    record Explored(int states, int depth, @Nullable String fault) {}
}
