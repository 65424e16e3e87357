package rollbook.turnaround;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import rollbook.quantity.DataRate;

/** From when to when a session used its reader and its destinations. */
record SpanOfWork(PastSession session, long endMillis) {
    /** A session may share this part of its time. Common sense, no source. */
    private static final double SHARED_PART = 0.1;

    /** A session marked as ended after more than twice its usual time was marked late. Common sense, no source. */
    private static final double LATE = 2;

    /** @param usual what sessions of this combination reach; null if none was measured */
    static SpanOfWork of(PastSession session, @Nullable DataRate usual) {
        if (session.bytes() == 0 || usual == null) {
            return new SpanOfWork(session, session.endMillis());
        }
        double usualMillis = session.bytes() / usual.bytesPerSecond().toDouble() * 1000;
        return new SpanOfWork(
                session, Math.min(session.endMillis(), session.startMillis() + Math.round(LATE * usualMillis)));
    }

    /**
     * The sessions of which no more than a tenth of the time was shared with others at the same reader or medium, in the
     * order given. Time shared with two counts twice.
     */
    static List<PastSession> undisturbed(List<SpanOfWork> spans) {
        Map<SpanOfWork, Long> sharedMillis = new IdentityHashMap<>();
        List<SpanOfWork> open = new ArrayList<>();
        for (SpanOfWork later : spans.stream()
                .sorted(Comparator.comparingLong(SpanOfWork::startMillis))
                .toList()) {
            open.removeIf(earlier -> earlier.endMillis <= later.startMillis());
            for (SpanOfWork earlier : open) {
                if (earlier.session.shares(later.session)) {
                    long millis = Math.max(0, Math.min(earlier.endMillis, later.endMillis) - later.startMillis());
                    sharedMillis.merge(earlier, millis, Long::sum);
                    sharedMillis.merge(later, millis, Long::sum);
                }
            }
            open.add(later);
        }
        return spans.stream()
                .filter(span -> sharedMillis.getOrDefault(span, 0L) <= SHARED_PART * span.millis())
                .map(SpanOfWork::session)
                .toList();
    }

    private long startMillis() {
        return session.startMillis();
    }

    private long millis() {
        return endMillis - startMillis();
    }
}
