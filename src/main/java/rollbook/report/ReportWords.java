package rollbook.report;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.manifest.Verdict;
import rollbook.verification.ClearingRecord;
import rollbook.verification.RollProof;
import rollbook.verification.RollProof.CopyProof;
import rollbook.web.Display;

/** What several reports say in the same words. */
@Component
class ReportWords {
    private static final int NAMED = 3;

    private final Display display;

    ReportWords(Display display) {
        this.display = display;
    }

    /**
     * A copy's verdict in a table.
     *
     * @param name under which the verdict is drawn
     * @param word the same for people
     * @param note the number that explains it, or that the copy was erased; may be empty
     */
    record Cell(String item, String name, String word, String note) {}

    /**
     * Something said of a thing with a code.
     *
     * @param href the thing's page; null on paper
     */
    record Line(String code, @Nullable String href, String text) {}

    /** Something that was done to a medium, or happened to what its clearance relied on. */
    record ActRow(String when, String item, String roll, String what, String by) {}

    Cell cell(CopyProof copy) {
        String name = display.verdict(copy.verdict());
        String note = copy.copy().isErased() ? display.text("report.copy.erased") : copy.note();
        return new Cell(copy.copy().itemCode(), name, verdict(copy.verdict()), note);
    }

    String verdict(Verdict verdict) {
        return display.text("web.verdict." + display.verdict(verdict));
    }

    /** How many rolls are proven on as many copies as are asked for, and which aren't, in sentences; why, if it is one only. */
    String proven(List<RollProof> rolls, int copiesAsked) {
        List<RollProof> unproven =
                rolls.stream().filter(roll -> roll.provenCopies() < copiesAsked).toList();
        int proven = rolls.size() - unproven.size();
        if (unproven.isEmpty()) {
            return display.text("report.proven.all", proven, copiesAsked);
        }
        String some = display.text("report.proven.some", proven, copiesAsked) + " ";
        if (unproven.size() == 1) {
            RollProof only = unproven.get(0);
            return some + display.text("report.proven.not", only.roll().code(), why(only));
        }
        String named =
                unproven.stream().limit(NAMED).map(roll -> roll.roll().code()).collect(Collectors.joining(", "));
        return some + display.text("report.proven.nor", named, Math.max(0, unproven.size() - NAMED));
    }

    /** The copies that are there and known to be bad, as a further sentence; empty if there are none. */
    String bad(List<RollProof> rolls) {
        List<String> bad = rolls.stream()
                .flatMap(roll -> roll.copies().stream()
                        .filter(copy -> !copy.copy().isErased())
                        .filter(copy -> copy.verdict() == Verdict.FAILED || copy.verdict() == Verdict.INCOMPLETE)
                        .map(copy -> display.text(
                                "report.subject.copy",
                                roll.roll().code(),
                                copy.copy().itemCode())))
                .toList();
        String named = String.join(", ", bad.subList(0, Math.min(NAMED, bad.size())));
        return bad.isEmpty()
                ? ""
                : " " + display.text("report.proven.bad", bad.size(), bad.size() > NAMED ? named + "…" : named);
    }

    /** What a roll's card waits for, all of it, or where it is. */
    String why(RollProof roll) {
        return roll.holds().isEmpty() ? roll.says() : roll.holds().get(0);
    }

    ActRow act(ClearingRecord act, ZoneId zone) {
        return new ActRow(at(act.at(), zone), act.itemCode(), act.rollCode(), what(act), act.byName());
    }

    String what(ClearingRecord act) {
        return switch (act.kind()) {
            case CLEARED, ERASED -> display.text("report.act." + act.kind());
            case CLEARED_WITHOUT_PROOF -> display.text("report.act.CLEARED_WITHOUT_PROOF", act.otherName(), act.note());
            case WITHDRAWN -> display.text("report.act.WITHDRAWN." + act.note());
            case ALARM -> display.text(act.note().isEmpty() ? "report.act.ALARM" : "report.act.ALARM.CARD_ERASED");
        };
    }

    /** Tue 14 Jul 2026, 18:42 on the clocks of the zone, which the report names once. */
    String at(Instant instant, ZoneId zone) {
        return display.shortDate(LocalDate.ofInstant(instant, zone)) + ", " + display.clockTime(instant, zone);
    }

    /** Since when the paper is true, and on whose clocks. */
    String printed(Instant now, ZoneId zone) {
        return display.text("report.printed", at(now, zone), display.place(zone), display.offset(zone));
    }

    String size(@Nullable Number bytes) {
        return bytes == null ? display.text("web.none") : display.size(bytes);
    }
}
