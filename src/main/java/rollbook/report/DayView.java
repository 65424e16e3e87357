package rollbook.report;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.report.ReportWords.ActRow;
import rollbook.report.ReportWords.Cell;
import rollbook.report.ReportWords.Line;

/**
 * A day's report in words, for the screen or for paper.
 *
 * @param printed since when it is true, and on whose clocks
 * @param maySign whether the reader’s role lets them sign
 * @param problems the worst first
 * @param hasOthers whether there are copies that serve no leg of the plan
 * @param held the cards that aren't free, and why
 * @param sha256 of the facts
 */
record DayView(
        boolean paper,
        UUID dayId,
        String title,
        String production,
        String sentence,
        String printed,
        boolean wrapped,
        boolean maySign,
        List<Line> problems,
        List<String> legs,
        boolean hasOthers,
        List<RollRow> rolls,
        String planSays,
        List<PlanRow> plan,
        List<ActRow> acts,
        List<Line> held,
        List<MediumRow> media,
        List<SignatureRow> signatures,
        String sha256) {

    /** @param cells of each leg in turn, then of the copies that serve none */
    record RollRow(
            String code,
            @Nullable String href,
            String camera,
            String card,
            String minutes,
            String size,
            String exact,
            String clips,
            List<List<Cell>> cells) {}

    /** @param camera empty for all together */
    record PlanRow(
            String camera,
            String plannedMinutes,
            String recordedMinutes,
            String plannedSize,
            String recordedSize,
            String share) {}

    record MediumRow(
            String code, String kind, String place, String daySize, String used, String capacity, String full) {}

    /**
     * @param says whether something has changed since, and what is weightiest
     * @param changes all of it
     * @param withdrawn why it was taken back; empty while it stands
     * @param own whether the reader of the page gave it
     */
    record SignatureRow(
            UUID id,
            String name,
            String when,
            String remark,
            String says,
            List<String> changes,
            String withdrawn,
            boolean own) {

        public boolean stands() {
            return withdrawn.isEmpty();
        }
    }

    /** Whether the reader's own signature stands below just these facts. */
    public boolean signedByViewer() {
        return signatures.stream()
                .anyMatch(row -> row.own() && row.stands() && row.changes().isEmpty());
    }
}
