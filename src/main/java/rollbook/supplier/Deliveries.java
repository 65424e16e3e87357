package rollbook.supplier;

import java.util.List;
import java.util.UUID;

/** Tells what was ordered from suppliers and when it came; whoever keeps orders implements it. */
public interface Deliveries {
    /** All of a production that name their supplier, without what was called off before anything came; oldest order first. */
    List<Delivery> of(UUID productionId);
}
