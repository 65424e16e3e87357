package rollbook.inventory;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import rollbook.production.MediaKind;

class CodeNumberingTests {
    private final List<MediaItem> items = new ArrayList<>();

    @Test
    void newItemsGoOnWhereTheLastOfTheirModelEnded() {
        item(MediaKind.DRIVE, "shuttle", "SHUTTLE-07");
        item(MediaKind.DRIVE, "shuttle", "SHUTTLE-08");
        item(MediaKind.DRIVE, "backup", "BACKUP-031");
        assertThat(new CodeNumbering(items).next(MediaKind.DRIVE, "Shuttle", 3))
                .containsExactly("SHUTTLE-09", "SHUTTLE-10", "SHUTTLE-11");
    }

    @Test
    void anUnknownModelGoesOnFromItsKindAndANewKindBeginsAtOne() {
        item(MediaKind.DRIVE, "shuttle", "D-7");
        CodeNumbering numbering = new CodeNumbering(items);
        assertThat(numbering.next(MediaKind.DRIVE, "other", 1)).containsExactly("D-8");
        assertThat(numbering.next(MediaKind.READER, "reader", 2)).containsExactly("READER-001", "READER-002");
    }

    @Test
    void whatWasGivenOrTakenIsNotGivenAgain() {
        item(MediaKind.CARD, "card", "CARD-001");
        CodeNumbering numbering = new CodeNumbering(items);
        assertThat(numbering.take("card-003")).isTrue();
        assertThat(numbering.take("CARD-001")).isFalse();
        assertThat(numbering.next(MediaKind.CARD, "card", 2)).containsExactly("CARD-004", "CARD-005");
        assertThat(numbering.next(MediaKind.CARD, "card", 1)).containsExactly("CARD-002");
    }

    @Test
    void numbersGrowByADigitRatherThanBeginAgain() {
        item(MediaKind.TAPE, "tape", "T98");
        assertThat(new CodeNumbering(items).next(MediaKind.TAPE, "tape", 2)).containsExactly("T099", "T100");
    }

    @Test
    void codesCountUpFromTheOneThatWasTyped() {
        assertThat(CodeNumbering.from("drive-08", 3)).hasValue(List.of("DRIVE-08", "DRIVE-09", "DRIVE-10"));
        assertThat(CodeNumbering.from("DRIVE", 2)).isEmpty();
        assertThat(CodeNumbering.from("X999999", 2)).isEmpty();
    }

    private void item(MediaKind kind, String model, String code) {
        items.add(new MediaItem(
                UUID.randomUUID(),
                code,
                "",
                kind,
                model,
                null,
                null,
                null,
                Ownership.BOUGHT,
                "",
                null,
                null,
                null,
                UUID.randomUUID(),
                "Set",
                false,
                "",
                Condition.GOOD,
                null,
                0));
    }
}
