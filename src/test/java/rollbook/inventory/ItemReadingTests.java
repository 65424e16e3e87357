package rollbook.inventory;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rollbook.production.Leg;
import rollbook.production.MediaKind;
import rollbook.production.Place;
import rollbook.production.Rendition;
import rollbook.quantity.Money;

class ItemReadingTests {
    static final Place SET = new Place(UUID.randomUUID(), "Set", false, "", 0);
    static final Leg SHUTTLE = new Leg(
            UUID.randomUUID(),
            "Shuttle",
            MediaKind.DRIVE,
            SET.id(),
            SET.name(),
            Rendition.AS_RECORDED,
            100,
            null,
            true,
            0);

    static ItemReading reading(String currency) {
        return new ItemReading(List.of(SET), List.of(SHUTTLE), Money.of(currency));
    }

    @Test
    void readsAllThatCanBeSaidOfAnItem() {
        Map<Column, String> cells = card();
        cells.put(Column.CODE, " drive-01 ");
        cells.put(Column.KIND, "Drive");
        cells.put(Column.CAPACITY_GB, "");
        cells.put(Column.CAPACITY_TB, "4.001");
        cells.put(Column.READ, "0.5");
        cells.put(Column.WRITE, "900");
        cells.put(Column.SERIAL, " SN-4711 ");
        cells.put(Column.OWNER, "HIRED");
        cells.put(Column.SUPPLIER, "Harbour Hire");
        cells.put(Column.COST, "45.5");
        cells.put(Column.HIRED_UNTIL, "2030-05-31");
        cells.put(Column.LEG, "shuttle");
        cells.put(Column.PLACE, "SET");
        cells.put(Column.HOLDER, "runner");
        assertThat(reading("EUR").read(cells).sound())
                .isEqualTo(new NewItem(
                        MediaKind.DRIVE,
                        new ItemDetails(
                                "DRIVE-01",
                                "SN-4711",
                                "test card",
                                4_001_000_000_000L,
                                500_000L,
                                900_000_000L,
                                Ownership.HIRED,
                                "Harbour Hire",
                                4_550L,
                                LocalDate.of(2030, 5, 31),
                                SHUTTLE.id()),
                        SET.id(),
                        "runner"));
    }

    @Test
    void aCardNeedsNothingButCodeKindModelCapacityAndPlace() {
        assertThat(reading("EUR").read(card()).sound().details().ownership()).isEqualTo(Ownership.BOUGHT);
    }

    /** Decimals of currencies as ISO 4217 has them: 2 for EUR, none for JPY, 3 for KWD. */
    @ParameterizedTest
    @CsvSource({"EUR,649.90,64990", "JPY,650,650", "KWD,1.234,1234", "EUR,0,0"})
    void costIsKeptInTheCurrencysSmallestUnit(String currency, String written, long minorUnits) {
        Map<Column, String> cells = card();
        cells.put(Column.COST, written);
        assertThat(reading(currency).read(cells).sound().details().costMinorUnits())
                .isEqualTo(minorUnits);
        assertThat(new java.math.BigDecimal(Money.of(currency).write(minorUnits)))
                .isEqualByComparingTo(written);
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            CODE,                                                  , missing
            CODE,        CARD 1                                    , code
            CODE,        -CARD                                     , code
            CODE,        KÄRTE-1                                   , code
            CODE,        A2345678901234567890123456789012X         , too-long
            KIND,                                                  , missing
            KIND,        spoon                                     , word
            MODEL,                                                 , missing
            CAPACITY_GB,                                           , no-capacity
            CAPACITY_GB, 0                                         , number
            CAPACITY_GB, -5                                        , number
            CAPACITY_GB, 9e2                                       , number
            CAPACITY_GB, '1,000'                                   , number
            CAPACITY_GB, 960 GB                                    , number
            CAPACITY_GB, ٩٦٠                                       , number
            CAPACITY_GB, 0.0000000001                              , bytes
            CAPACITY_GB, 99999999999                               , bytes
            CAPACITY_TB, 1                                         , two-capacities
            READ,        fast                                      , number
            WRITE,       0.0000001                                 , bytes
            OWNER,       borrowed                                  , word
            COST,        1.999                                     , money
            COST,        €5                                        , number
            COST,        999999999999999999                        , money
            HIRED_UNTIL, 31.05.2030                                , date
            HIRED_UNTIL, 2030-02-30                                , date
            HIRED_UNTIL, +12030-01-01                              , date
            HIRED_UNTIL, 2030-05-31                                , bought-until
            LEG,         Vault                                     , unknown-name
            LEG,         Shuttle                                   , leg-kind
            PLACE,                                                 , missing
            PLACE,       Moon                                      , unknown-name
            STATE,       held                                      , state
            STATE,       good                                      , state
            """)
    void saysWhatIsWrong(Column column, String written, String problem) {
        Map<Column, String> cells = card();
        cells.put(column, written == null ? "" : written);
        ItemReading.Read read = reading("EUR").read(cells);
        assertThat(read.item()).isNull();
        assertThat(read.problems())
                .extracting(Problem::column, Problem::key)
                .containsExactly(org.assertj.core.groups.Tuple.tuple(column, "inventory.problem." + problem));
    }

    @Test
    void whatCannotBePrintedIsNotKept() {
        for (String hidden : List.of("a\u0000b", "a\u0007b", "a\nb", "a\u2028b", "a\uD800b")) {
            Map<Column, String> cells = card();
            cells.put(Column.HOLDER, hidden);
            assertThat(reading("EUR").read(cells).problems())
                    .as(Arrays.toString(hidden.toCharArray()))
                    .extracting(Problem::key)
                    .containsExactly("inventory.problem.unprintable");
        }
    }

    @Test
    void allThatIsWrongIsSaidAtOnce() {
        assertThat(reading("EUR")
                        .read(Map.of(Column.KIND, "card", Column.READ, "x"))
                        .problems())
                .extracting(Problem::column)
                .containsExactly(Column.CODE, Column.MODEL, Column.CAPACITY_GB, Column.READ, Column.PLACE);
    }

    static Map<Column, String> card() {
        Map<Column, String> cells = new EnumMap<>(Column.class);
        cells.put(Column.CODE, "CARD-1");
        cells.put(Column.KIND, "card");
        cells.put(Column.MODEL, "test card");
        cells.put(Column.CAPACITY_GB, "960");
        cells.put(Column.PLACE, "Set");
        return cells;
    }
}
