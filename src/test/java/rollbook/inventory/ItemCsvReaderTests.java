package rollbook.inventory;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import rollbook.web.SafeCell;

class ItemCsvReaderTests {
    static final Map<Column, String> HEADERS = new EnumMap<>(Map.ofEntries(
            Map.entry(Column.CODE, "Code"),
            Map.entry(Column.KIND, "Kind"),
            Map.entry(Column.MODEL, "Model"),
            Map.entry(Column.CAPACITY_GB, "Capacity GB"),
            Map.entry(Column.CAPACITY_TB, "Capacity TB"),
            Map.entry(Column.READ, "Read MB/s"),
            Map.entry(Column.WRITE, "Write MB/s"),
            Map.entry(Column.SERIAL, "Serial number"),
            Map.entry(Column.OWNER, "Owner"),
            Map.entry(Column.SUPPLIER, "Supplier"),
            Map.entry(Column.COST, "Cost"),
            Map.entry(Column.HIRED_UNTIL, "Hired until"),
            Map.entry(Column.LEG, "Leg"),
            Map.entry(Column.PLACE, "Place"),
            Map.entry(Column.HOLDER, "Holder"),
            Map.entry(Column.STATE, "State")));
    private static final String HEADER = "Code,Kind,Model,Capacity GB,Place\n";

    static ItemCsvReader.Result read(String text) {
        return new ItemCsvReader(
                        ItemReadingTests.reading("EUR"), HEADERS, new Taken(Set.of("TAKEN-1"), Set.of("SN-TAKEN")))
                .read(text);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Code,Kind,Model,Capacity GB,Place\nCARD-1,card,\"one, two\",960,Set\nCARD-2,card,\"one, two\",960,Set\n",
                "Code;Kind;Model;Capacity GB;Place\r\nCARD-1;card;one, two;960;Set\r\nCARD-2;card;one, two;960;Set",
                "\uFEFFCode\tKind\tModel\tCapacity GB\tPlace\rCARD-1\tcard\tone, two\t960\tSet\rCARD-2\tcard\tone, two\t960\tSet\r",
                "\n\n place;MODEL;\"capacity, gb\";code;KIND\n\nSet;one, two;960;CARD-1;card\n   \nset;one, two;960;card-2;Card\n",
                "Code,Kind,Model,Capacity GB,Place,,\nCARD-1,card,\"one, two\",960,Set,,,,\nCARD-2,card,\"one, two\",960,Set\n",
            })
    void readsCommasSemicolonsAndTabsWithAnyLineEnd(String text) {
        ItemCsvReader.Result read = read(text);
        assertThat(read.bad()).isEmpty();
        assertThat(read.items()).extracting(NewItem::code).containsExactly("CARD-1", "CARD-2");
        assertThat(read.items()).allSatisfy(item -> {
            assertThat(item.details().model()).isEqualTo("one, two");
            assertThat(item.details().capacityBytes()).isEqualTo(960_000_000_000L);
            assertThat(item.placeId()).isEqualTo(ItemReadingTests.SET.id());
        });
        assertThat(read.usable()).isTrue();
    }

    static Stream<Arguments> badLists() {
        return Stream.of(
                arguments("", List.of("1 null no-header")),
                arguments("\n \n", List.of("1 null no-header")),
                arguments("CARD-1,card,x,960,Set\n", List.of("1 null no-header")),
                arguments(HEADER, List.of("1 null no-lines")),
                arguments("Code,Colour,Kind,Model,Place\nREADER-1,red,reader,x,Set", List.of("1 null unknown-column")),
                arguments("Code,Kind,Model,Place,Kind\nREADER-1,reader,x,Set,", List.of("1 KIND column-twice")),
                arguments("Code,Kind\nREADER-1,reader", List.of("1 MODEL no-column", "1 PLACE no-column")),
                arguments(
                        HEADER + "CARD-1,card,\"x,960,Set\nCARD-2,card,\"x\"y,960,Set\nCARD-3,card,x,960,Set",
                        List.of("2 null quotes", "3 null quotes")),
                arguments(HEADER + "CARD-1,card,one, two,960,Set", List.of("2 null too-many-cells")),
                arguments(
                        HEADER + "CARD-1,card",
                        List.of("2 MODEL missing", "2 CAPACITY_GB no-capacity", "2 PLACE missing")),
                arguments(
                        HEADER + "\nCARD-1,card,x,960,Set\ncard-1,card,x,960,Set\nTAKEN-1,card,x,960,Set\n",
                        List.of("4 CODE twice", "5 CODE exists")),
                arguments(
                        "Code,Kind,Model,Serial number,Place\nREADER-1,reader,x,sn 7,Set\nREADER-2,reader,x,SN 7,Set\n"
                                + "READER-3,reader,x,sn-taken,Set\nREADER-4,reader,x,,Set\nREADER-5,reader,x,,Set",
                        List.of("3 SERIAL serial-twice", "4 SERIAL serial-exists")),
                arguments(
                        HEADER + "CARD-1,spoon,x,0,Moon",
                        List.of("2 KIND word", "2 CAPACITY_GB number", "2 PLACE unknown-name")));
    }

    @ParameterizedTest
    @MethodSource("badLists")
    void findsEveryBadLineWithItsNumberAndColumn(String text, List<String> expected) {
        ItemCsvReader.Result read = read(text);
        assertThat(read.bad())
                .extracting(line -> line.number() + " " + line.problem().column() + " "
                        + line.problem().key().replace("inventory.problem.", ""))
                .containsExactlyElementsOf(expected);
        assertThat(read.usable()).isFalse();
    }

    @Test
    void aBadLineDoesNotHideTheGoodOnesAfterIt() {
        ItemCsvReader.Result read = read(HEADER + "CARD-1,card,\"x,960,Set\nCARD-2,card,x,960,Set\n");
        assertThat(read.good()).extracting(ItemCsvReader.GoodLine::number).containsExactly(3);
    }

    @Test
    void noTextMakesItFailAndWhatIsWrongLiesOnALineThatIsThere() {
        long seed = 20_260_714L;
        var random = new Random(seed);
        String[] pieces = {
            "Code",
            "Kind",
            "Model",
            "Place",
            "Capacity GB",
            "Capacity TB",
            "Cost",
            "Hired until",
            "State",
            "card",
            "drive",
            "Set",
            "Shuttle",
            ",",
            ",",
            ";",
            "\t",
            "\n",
            "\r\n",
            "\r",
            "\"",
            "\"\"",
            "'",
            "=1+1",
            "-",
            "960",
            "1e9",
            "0.5",
            "999999999999999999",
            "2030-05-31",
            "CARD-1",
            "\uFEFF",
            "\u0000",
            "\uD800",
            "\u2028",
            "😀",
            " ",
            "\\",
            "#"
        };
        for (int round = 0; round < 20_000; round++) {
            var text = new StringBuilder(random.nextBoolean() ? HEADER : "");
            int length = random.nextInt(40);
            for (int i = 0; i < length; i++) {
                text.append(
                        random.nextInt(10) == 0
                                ? String.valueOf((char) random.nextInt(0x10000))
                                : pieces[random.nextInt(pieces.length)]);
            }
            String written = text.toString();
            ItemCsvReader.Result read = read(written);
            int lines = Math.max(1, ItemCsvReader.lines(written).length);
            assertThat(read.bad())
                    .as("seed %d round %d: %s", seed, round, written)
                    .allMatch(line -> line.number() >= 1 && line.number() <= lines);
            assertThat(read.good().isEmpty() && read.bad().isEmpty())
                    .as("seed %d round %d says nothing: %s", seed, round, written)
                    .isFalse();
        }
    }

    /** The characters are those that common spreadsheet programs take for the beginning of a formula. */
    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+1", "-1", "@sum", "\tx", "\rx", "'x", "''", "＝1", "plain", "", "a=b"})
    void aCellThatWouldBeAFormulaIsMadeTextAndComesBack(String text) {
        String written = SafeCell.write(text);
        assertThat("=+-@\t\r＝".indexOf(written.isEmpty() ? ' ' : written.charAt(0)))
                .isEqualTo(-1);
        assertThat(SafeCell.read(written)).isEqualTo(text);
    }
}
