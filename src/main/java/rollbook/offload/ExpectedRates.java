package rollbook.offload;

import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.quantity.DataRate;
import rollbook.turnaround.LearnedRate;
import rollbook.turnaround.LearnedRate.Basis;
import rollbook.turnaround.MeasuredRates.Expected;
import rollbook.turnaround.OffloadPart.CardWay;
import rollbook.turnaround.PastSession.Written;
import rollbook.web.Display;

/** Says how fast a session should be, and how anybody can know. */
@Component
class ExpectedRates {
    private final Display display;

    ExpectedRates(Display display) {
        this.display = display;
    }

    /** By the inventory alone, as a session that has ended is judged. */
    ExpectedRate stated(Offload offload, @Nullable String slowest) {
        return new ExpectedRate(
                offload.expectedBytesPerSecond(),
                slowest == null
                        ? display.text("offload.session.unknown-rate")
                        : display.text("offload.session.limited-by", slowest));
    }

    /** By what the show’s earlier sessions reached, where there are any like this one, else by the inventory. */
    ExpectedRate of(LearnedOffloads learned, Offload offload, @Nullable String slowest) {
        return learned.expected(offload.id())
                .filter(ExpectedRates::isLearned)
                .map(expected ->
                        of(expected, learned.sessions().get(offload.id()).written(), offload.expectedBytesPerSecond()))
                .orElseGet(() -> stated(offload, slowest));
    }

    /** @param stated what the inventory says of the same parts; null if it says nothing */
    ExpectedRate of(Expected expected, List<Written> written, @Nullable Long stated) {
        return new ExpectedRate(rounded(expected.rate().rate()), because(expected, written, stated));
    }

    private String because(Expected expected, List<Written> written, @Nullable Long stated) {
        if (!isLearned(expected)) {
            return display.text("offload.rate.stated");
        }
        String seen = seen(expected, written);
        return stated == null ? seen : display.text("offload.rate.seen-not-stated", seen, display.rate(stated));
    }

    static boolean isLearned(Expected expected) {
        return expected.rate().basis() != Basis.STATED;
    }

    static long rounded(DataRate rate) {
        return rate.bytesPerSecond().toBigDecimal(0, RoundingMode.HALF_UP).longValueExact();
    }

    private String seen(Expected expected, List<Written> written) {
        LearnedRate rate = expected.rate();
        String where = where(expected, written);
        return display.text(
                rate.basis() == Basis.PASSED ? "offload.rate.passed" : "offload.rate.measured", rate.sessions(), where);
    }

    private String where(Expected expected, List<Written> written) {
        if (expected.slowest() instanceof CardWay way) {
            return way.adapter() == null
                    ? display.text("offload.rate.through", way.reader())
                    : display.text("offload.rate.through-adapter", way.reader(), way.adapter());
        }
        Optional<String> medium = written.stream()
                .filter(one -> one.kind().equals(expected.slowest()))
                .map(Written::medium)
                .findFirst();
        return medium.map(code -> display.text("offload.rate.onto", code))
                .orElseGet(() -> display.text("offload.rate.alike"));
    }
}
