package rollbook.verification;

import com.github.kagkarlsson.scheduler.ScheduledExecution;
import com.github.kagkarlsson.scheduler.SchedulerClient;
import com.github.kagkarlsson.scheduler.task.TaskInstanceId;
import java.io.IOException;
import java.io.InputStream;
import java.util.LinkedHashSet;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.production.Membership;

/** Takes manifests in for other modules, the way the pages do. */
@Service
public class ManifestIntake {
    private final Documents documents;
    private final DocumentReader reader;
    private final RollJudge judge;
    private final SchedulerClient jobs;

    ManifestIntake(Documents documents, DocumentReader reader, RollJudge judge, SchedulerClient jobs) {
        this.documents = documents;
        this.reader = reader;
        this.judge = judge;
        this.jobs = jobs;
    }

    /** Keeps a document of which nobody says what it describes; its parts wait for somebody who does. */
    @Transactional(rollbackFor = Exception.class)
    public UUID store(Membership by, String fileName, InputStream bytes) throws IOException {
        return documents.store(by, fileName, bytes, null, null).documentId();
    }

    /** Keeps a document of what is on the cards themselves. */
    @Transactional(rollbackFor = Exception.class)
    public UUID storeForCards(Membership by, String fileName, InputStream bytes) throws IOException {
        return documents.store(by, fileName, bytes, Subject.CARD, null).documentId();
    }

    /** Keeps a document of the copies on a medium. */
    @Transactional(rollbackFor = Exception.class)
    public UUID storeForCopies(Membership by, String fileName, InputStream bytes, UUID itemId) throws IOException {
        return documents.store(by, fileName, bytes, Subject.COPY, itemId).documentId();
    }

    /**
     * Makes sure that a document which the same transaction has stored is read, and judges the rolls it speaks of, now instead of in the
     * background.
     */
    @Transactional(propagation = Propagation.MANDATORY, rollbackFor = Exception.class)
    public void readNow(UUID productionId, UUID documentId) throws IOException {
        if (reader.read(documentId)) {
            jobs.cancel(TaskInstanceId.of(DocumentReading.TASK.getTaskName(), documentId.toString()));
        }
        for (UUID rollId : takeOrderedRolls(productionId)) {
            judge.judge(productionId, rollId);
        }
    }

    private Set<UUID> takeOrderedRolls(UUID productionId) {
        Set<UUID> rolls = new LinkedHashSet<>();
        for (ScheduledExecution<Void> job :
                jobs.getScheduledExecutionsForTask(RollJudging.TASK.getTaskName(), Void.class)) {
            String[] ids = job.getTaskInstance().getId().split("/");
            if (ids[0].equals(productionId.toString())) {
                rolls.add(UUID.fromString(ids[1]));
                jobs.cancel(job.getTaskInstance());
            }
        }
        return rolls;
    }
}
