package rollbook.cost;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the page of costs shows, amounts in words.
 *
 * @param bar null while nothing costs anything
 * @param unpriced items that were bought for nobody knows how much
 * @param computedAt of the forecast behind what is to come; null without one
 */
record CostPage(
        String sentence,
        List<Total> totals,
        @Nullable CostBar bar,
        List<KindRow> kinds,
        List<Ratio> ratios,
        List<String> buyOrHire,
        List<LineRow> lines,
        List<BudgetRow> budgets,
        int unpriced,
        @Nullable Instant computedAt) {

    /** @param strong whether it is a sum of others, or what is left */
    record Total(String words, String explanation, String amount, boolean strong) {}

    record KindRow(String kind, String way, String spent, String committed, String toCome, String total) {}

    /** What one terabyte, or one shooting day, costs. */
    record Ratio(String what, String soFar, String wholeShow) {}

    record LineRow(
            String stage, String kind, String way, String what, String source, String href, String on, String amount) {}

    record BudgetRow(String amount, String reason, String byName, Instant at) {}
}
