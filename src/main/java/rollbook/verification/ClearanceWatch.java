package rollbook.verification;

import com.github.kagkarlsson.scheduler.SchedulerClient;
import java.time.Clock;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.inventory.MediaItemChanged;
import rollbook.offload.Copies;
import rollbook.offload.Rolls;
import rollbook.production.CopyPlanChanged;

/**
 * Orders a new look at standing clearances when a medium or the copy plan they relied on changes. The erasure checks the
 * proof again in any case; this takes the card off the list of those that may be erased.
 */
@Component
class ClearanceWatch {
    private final Rolls rolls;
    private final Copies copies;
    private final SchedulerClient jobs;
    private final Clock clock;

    ClearanceWatch(Rolls rolls, Copies copies, SchedulerClient jobs, Clock clock) {
        this.rolls = rolls;
        this.copies = copies;
        this.jobs = jobs;
        this.clock = clock;
    }

    @EventListener
    @Transactional(propagation = Propagation.MANDATORY)
    public void onMediaItemChanged(MediaItemChanged changed) {
        copies.clearedRollsOn(changed.productionId(), changed.itemId())
                .forEach(roll -> RollJudging.order(jobs, clock, changed.productionId(), roll));
    }

    @EventListener
    @Transactional(propagation = Propagation.MANDATORY)
    public void onCopyPlanChanged(CopyPlanChanged changed) {
        rolls.onClearedCards(changed.productionId())
                .forEach(roll -> RollJudging.order(jobs, clock, changed.productionId(), roll));
    }
}
