package rollbook.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import rollbook.manifest.Verdict;
import rollbook.report.FactChange.Weight;
import rollbook.verification.ClearingRecord;

class FactSheetTests {
    private static final String HEADER =
            "record,unit,day,date,roll,camera,card,item,kind,leg,rendition,place,state,minutes,bytes,count,verdict,reasons,checked_at,sha256,reference_sha256,at,by,note\r\n";

    private static Fact roll(String code, String minutes, String state) {
        return Fact.of(FactKind.ROLL)
                .with(Column.ROLL, code)
                .with(Column.MINUTES, minutes)
                .with(Column.STATE, state)
                .build();
    }

    private static Fact copy(String roll, String item, Verdict verdict) {
        return Fact.of(FactKind.COPY)
                .with(Column.ROLL, roll)
                .with(Column.ITEM, item)
                .with(Column.VERDICT, verdict)
                .build();
    }

    private static Fact act(ClearingRecord.Kind kind, String item) {
        return Fact.of(FactKind.ACT)
                .with(Column.STATE, kind)
                .with(Column.ITEM, item)
                .with(Column.AT, "2031-03-04T05:10:00Z")
                .build();
    }

    @Test
    void isACsvFileThatSpreadsheetsReadAndDoNotRun() {
        FactSheet sheet = new FactSheet(List.of(
                copy("A001", "SHUTTLE-1", Verdict.SIZE_ONLY),
                Fact.of(FactKind.ROLL)
                        .with(Column.ROLL, "A001")
                        .with(Column.MINUTES, "12.5")
                        .with(Column.NOTE, "=1+1, \"quoted\"\nand more")
                        .build()));
        assertThat(new String(sheet.bytes(), StandardCharsets.UTF_8))
                .isEqualTo(HEADER
                        + "roll,,,,A001,,,,,,,,,12.5,,,,,,,,,,\"'=1+1, \"\"quoted\"\"\nand more\"\r\n"
                        + "copy,,,,A001,,,SHUTTLE-1,,,,,,,,,size only,,,,,,,\r\n");
    }

    /** The digest by another program: sha256sum (coreutils) of these bytes. */
    @Test
    void itsDigestIsTheOneOfTheFilesBytes() {
        FactSheet sheet = new FactSheet(List.of(copy("A001", "SHUTTLE-1", Verdict.PROVEN)));
        assertThat(sheet.sha256()).isEqualTo("2015baab6ded3bc9cfa2d51ef7bf486692d55d6d0eef52d857acbf8ad0c07a37");
    }

    @Test
    void theSameFactsAreTheSameBytesInWhateverOrderTheyCome() {
        List<Fact> facts = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            facts.add(roll("A%03d".formatted(i), "10", "held"));
            facts.add(copy("A%03d".formatted(i), "VAULT-1", Verdict.PROVEN));
            facts.add(act(ClearingRecord.Kind.CLEARED, "CARD-" + i));
        }
        FactSheet sheet = new FactSheet(facts);
        long seed = 20_310_303;
        Collections.shuffle(facts, new Random(seed));
        assertThat(new FactSheet(facts).bytes()).as("seed %d", seed).isEqualTo(sheet.bytes());
    }

    @Test
    void isReadBackAsItWasWritten() {
        FactSheet sheet = new FactSheet(List.of(
                roll("A001", "10", "held"),
                Fact.of(FactKind.SIGNATURE)
                        .with(Column.BY, "@Ann, \"A\"")
                        .with(Column.NOTE, "'quoted\r\nlines\n\n")
                        .build()));
        FactSheet read = FactSheet.parse(new String(sheet.bytes(), StandardCharsets.UTF_8));
        assertThat(read).isEqualTo(sheet);
        assertThat(sheet.since(read)).isEmpty();
    }

    @Test
    void whatSpeaksAgainstTheEarlierSheetComesFirst() {
        FactSheet earlier = new FactSheet(List.of(
                roll("A001", "10", "held"),
                roll("A002", "10", "held"),
                copy("A001", "SHUTTLE-1", Verdict.PROVEN),
                copy("A002", "SHUTTLE-1", Verdict.UNKNOWN)));
        FactSheet now = new FactSheet(List.of(
                roll("A001", "10", "cleared"),
                roll("A002", "11", "held"),
                copy("A001", "SHUTTLE-1", Verdict.FAILED),
                copy("A001", "TAPE-1", Verdict.PROVEN),
                act(ClearingRecord.Kind.ALARM, "SHUTTLE-1"),
                act(ClearingRecord.Kind.ERASED, "CARD-1")));
        List<FactChange> changes = now.since(earlier);
        assertThat(changes)
                .extracting(FactChange::weight)
                .containsExactly(
                        Weight.VERDICT,
                        Weight.VERDICT,
                        Weight.ALARM,
                        Weight.OTHERWISE,
                        Weight.MORE,
                        Weight.MORE,
                        Weight.MORE);
        assertThat(changes.get(0).columns()).containsExactly(Column.VERDICT);
        assertThat(changes.get(1).isGone()).as("the copy of A002").isTrue();
        assertThat(changes.get(3).columns()).containsExactly(Column.MINUTES);
        assertThat(changes.get(4).columns()).as("where the card of A001 went").containsExactly(Column.STATE);
    }
}
