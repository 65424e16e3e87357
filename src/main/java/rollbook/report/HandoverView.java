package rollbook.report;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.report.ReportWords.ActRow;
import rollbook.report.ReportWords.Cell;
import rollbook.report.ReportWords.Line;

/**
 * The handover report in words, for the screen or for paper.
 *
 * @param unproven the rolls that aren't proven on as many copies as are asked for, and why
 * @param withoutProof what was cleared without proof, for good
 * @param media what holds files, by place
 * @param rolls of each day on paper, of one day on a screen
 * @param documents that {@code rolls} name by their numbers
 * @param sha256 of the CSV file of all of it
 */
record HandoverView(
        boolean paper,
        String title,
        String production,
        String sentence,
        String printed,
        List<DayRow> days,
        List<Line> unproven,
        List<ActRow> withoutProof,
        List<ActRow> alarms,
        List<MediumRow> media,
        List<DayRolls> rolls,
        List<DocumentRow> documents,
        String sha256) {

    /** @param signed who signed the day's report */
    record DayRow(
            UUID id,
            String name,
            @Nullable String href,
            String date,
            String state,
            String rolls,
            String size,
            String plannedMinutes,
            String recordedMinutes,
            String proven,
            String signed) {}

    record MediumRow(
            String place,
            String code,
            @Nullable String href,
            String kind,
            String holder,
            String state,
            String rolls,
            String used) {}

    record DayRolls(String title, List<RollRow> rows) {}

    record RollRow(
            String code,
            @Nullable String href,
            String camera,
            String card,
            String minutes,
            String size,
            String clips,
            List<CopyRow> copies) {}

    /** @param proof the numbers of the documents that prove it */
    record CopyRow(Cell cell, String place, String proof) {}

    record DocumentRow(int number, @Nullable String href, String fileName, String sha256) {}
}
