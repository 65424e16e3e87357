package rollbook.verification;

import com.github.kagkarlsson.scheduler.SchedulerClient;
import java.time.Clock;
import java.util.stream.Stream;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.inventory.MediaItemChanged;
import rollbook.offload.Copies;
import rollbook.offload.Rolls;
import rollbook.production.CopyPlan;
import rollbook.production.CopyPlanChanged;

/**
 * Orders a new look at standing clearances when a medium or the copy plan they relied on changes. The erasure checks the
 * proof again in any case; this takes the medium off the list of those that may be erased.
 */
@Component
class ClearanceWatch {
    private final Rolls rolls;
    private final Copies copies;
    private final MediumClearances media;
    private final CopyPlan plan;
    private final SchedulerClient jobs;
    private final Clock clock;

    ClearanceWatch(
            Rolls rolls, Copies copies, MediumClearances media, CopyPlan plan, SchedulerClient jobs, Clock clock) {
        this.rolls = rolls;
        this.copies = copies;
        this.media = media;
        this.plan = plan;
        this.jobs = jobs;
        this.clock = clock;
    }

    @EventListener
    @Transactional(propagation = Propagation.MANDATORY)
    public void onMediaItemChanged(MediaItemChanged changed) {
        Stream.concat(
                        copies.clearedRollsOn(changed.productionId(), changed.itemId()).stream(),
                        media.rollsThatLeanOn(changed.productionId(), changed.itemId()).stream())
                .distinct()
                .forEach(roll -> RollJudging.order(jobs, clock, changed.productionId(), roll));
    }

    @EventListener
    @Transactional(propagation = Propagation.MANDATORY)
    public void onCopyPlanChanged(CopyPlanChanged changed) {
        plan.awaitGrants(changed.productionId());
        Stream.concat(
                        rolls.onClearedCards(changed.productionId()).stream(),
                        media.rollsOnCleared(changed.productionId()).stream())
                .distinct()
                .forEach(roll -> RollJudging.order(jobs, clock, changed.productionId(), roll));
    }
}
