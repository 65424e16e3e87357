package rollbook.report;

import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import rollbook.burndown.Band;
import rollbook.forecast.CoverGauge;
import rollbook.forecast.OrderFlag;
import rollbook.forecast.StorageStatus;
import rollbook.production.Membership;
import rollbook.report.ReportWords.Line;
import rollbook.report.StatusView.PoolRow;
import rollbook.verification.ProofSummary;
import rollbook.web.Display;

/** Says how storage stands so that it fits on one page. */
@Component
class StatusViews {
    /** More pools than these, and each gets less room. */
    private static final int AT_EASE = 3;

    private static final int MOST_POOLS = 7;
    private static final int MOST_HELD = 5;
    private static final int MOST_HELD_BESIDE_FEW = 2;

    private final ReportWords words;
    private final Display display;
    private final Clock clock;

    StatusViews(ReportWords words, Display display, Clock clock) {
        this.words = words;
        this.display = display;
        this.clock = clock;
    }

    StatusView of(StorageStatus status, ProofSummary proof, Membership reader, boolean paper) {
        int more = Math.max(0, status.pools().size() - MOST_POOLS);
        return new StatusView(
                paper,
                display.text("report.status.title"),
                display.text("report.production", reader.productionName(), reader.code()),
                status.sentence(),
                words.printed(clock.instant(), reader.zone()),
                status.pools().stream()
                        .limit(MOST_POOLS)
                        .map(pool -> pool(pool, status))
                        .toList(),
                more == 0 ? "" : display.text("report.status.more", more),
                status.pools().size() > AT_EASE,
                held(proof),
                heldLines(proof, mostHeld(status.pools().size()), reader, paper),
                status.method() + " "
                        + display.text("report.status.computed", words.at(status.checkedAt(), reader.zone()))
                        + (status.outdated() ? " " + display.text("report.status.outdated") : ""));
    }

    /** What is said of cards gets the room that the pools leave. */
    private static int mostHeld(int pools) {
        return pools > AT_EASE ? 1 : pools > 2 ? MOST_HELD_BESIDE_FEW : MOST_HELD;
    }

    private PoolRow pool(StorageStatus.Pool pool, StorageStatus status) {
        Band end = pool.points().isEmpty()
                ? Band.certain(pool.roomBytes())
                : pool.points().get(pool.points().size() - 1).leftBytes();
        return new PoolRow(
                pool.name(),
                pool.tag(),
                pool.flag() != OrderFlag.NONE,
                pool.sentence(),
                display.text("report.status.room", display.size(pool.roomBytes()), display.size(pool.capacityBytes())),
                display.text("report.status.cover", pool.coverDays().p50(), pool.daysToCome()),
                pool.daysToCome() == 0 ? null : CoverGauge.of(pool.daysToCome(), pool.coverDays(), pool.leadDays()),
                display.text("report.status.chance", pool.chance()),
                order(pool),
                FanPicture.of(pool, status.today(), status.endOfShow()),
                display.text(
                        "report.status.picture",
                        pool.name(),
                        display.size(pool.roomBytes()),
                        left(end.p50()),
                        left(end.p10()),
                        left(end.p90())),
                display.text("report.status.today"),
                display.text(
                        "report.status.end", display.shortDate(status.endOfShow()), left(end.p10()), left(end.p90())));
    }

    private String left(long bytes) {
        return display.size(Math.max(0, bytes));
    }

    private String order(StorageStatus.Pool pool) {
        LocalDate orderBy = pool.orderBy();
        return orderBy == null
                ? ""
                : display.text("report.status.order", pool.order(), display.shortDate(orderBy), pool.cost());
    }

    private String held(ProofSummary proof) {
        int held = proof.bad().size() + proof.held().size();
        int exposed = proof.exposed().size();
        int free = proof.cleared().size() + proof.ready().size();
        return held + exposed + free == 0
                ? display.text("report.status.held.none")
                : display.text("report.status.held", held, exposed, free);
    }

    private List<Line> heldLines(ProofSummary proof, int most, Membership reader, boolean paper) {
        return Stream.concat(proof.bad().stream(), proof.held().stream())
                .limit(most)
                .map(line -> new Line(
                        line.cardCode(),
                        DayViews.href(reader, "rolls/" + line.rollId(), paper),
                        display.text("report.held", line.rollCode(), line.says())))
                .toList();
    }
}
