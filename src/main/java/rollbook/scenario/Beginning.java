package rollbook.scenario;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import rollbook.quantity.Money;

/** What a scenario's form begins with: what the production knows, else the scenario saved last, else the usual. */
final class Beginning {
    /** Of parts whose speed nobody knows, in MB/s. */
    static final String USUAL_RATE = "400";

    static final String YES = "YES";
    static final String NO = "NO";
    static final String DIRECT = "DIRECT";
    static final String AS_RECORDED = "AS_RECORDED";
    static final String ENCODED = "ENCODED";

    /** So much of a day is left at least when it is played on from now. */
    private static final int HOURS_LEFT = 3;

    private final DayFacts facts;
    private final Money money;
    private final Map<String, Begun> begun = new LinkedHashMap<>();

    private Beginning(DayFacts facts, Money money) {
        this.facts = facts;
        this.money = money;
    }

    /** Everything as it was saved under that name. */
    static Map<String, Begun> kept(Map<String, String> values, String name) {
        Map<String, Begun> begun = new LinkedHashMap<>();
        for (Figure figure : Figure.values()) {
            begun.put(figure.key(), new Begun(figure.mayBeEmpty() ? "" : figure.usual, Begun.Origin.KEPT, name));
        }
        values.forEach((key, value) -> begun.put(key, new Begun(value, Begun.Origin.KEPT, name)));
        return begun;
    }

    /**
     * @param last values of the scenario saved last, if there is one
     * @param lastName its name
     */
    static Map<String, Begun> of(DayFacts facts, Map<String, String> last, String lastName, Money money) {
        Beginning beginning = new Beginning(facts, money);
        for (Figure figure : Figure.values()) {
            if (!figure.ofEach()) {
                String remembered = last.get(figure.key());
                beginning.begun.put(
                        figure.key(),
                        remembered == null
                                ? new Begun(figure.usual, Begun.Origin.USUAL, "")
                                : new Begun(remembered, Begun.Origin.LAST_SCENARIO, lastName));
            }
        }
        // What goes wrong and what is tried are of one scenario only.
        for (Figure figure : List.of(Figure.REPEAT, Figure.READER_DIES, Figure.DIES_AT, Figure.EXTRA_READERS)) {
            beginning.begun.put(figure.key(), new Begun(figure.usual, Begun.Origin.USUAL, ""));
        }
        beginning.ofTheProduction();
        return beginning.begun;
    }

    private void ofTheProduction() {
        facts.cameras().forEach(camera -> {
            put(Figure.MINUTES.key(camera.letter()), camera.minutes(), Begun.Origin.PLAN, camera.formats());
            put(Figure.CARD_TYPE.key(camera.letter()), cardType(camera), Begun.Origin.ROLLS, camera.letter());
        });
        facts.cards()
                .forEach(type -> put(
                        Figure.CARDS.key(type.key()),
                        Integer.toString(type.count()),
                        facts.tonight() == null ? Begun.Origin.MEDIA : Begun.Origin.TONIGHT,
                        type.model()));
        facts.readers()
                .forEach(reader -> put(Figure.WAY.key(reader.code()), DIRECT, Begun.Origin.MEDIA, reader.code()));
        facts.destinations().forEach(this::destination);
        price(Figure.CARD_WEEK, facts.cards(), DayFacts.CardType::hireWeekMinorUnits, DayFacts.CardType::model);
        price(Figure.READER_WEEK, facts.readers(), DayFacts.Reader::hireWeekMinorUnits, DayFacts.Reader::code);
        price(Figure.ADAPTER_WEEK, facts.adapters(), DayFacts.Adapter::hireWeekMinorUnits, DayFacts.Adapter::code);
        price(
                Figure.DRIVE_PRICE,
                facts.destinations(),
                DayFacts.Destination::priceMinorUnits,
                DayFacts.Destination::medium);
        if (facts.tonight() != null) {
            tonight(facts.tonight());
        }
    }

    /** What the camera recorded on last, else the kind of which there are most. */
    private String cardType(DayFacts.Camera camera) {
        return facts.cards().stream()
                .map(DayFacts.CardType::key)
                .filter(key -> key.equals(camera.usualCards()))
                .findFirst()
                .or(() -> facts.cards().stream()
                        .reduce((one, other) -> other.count() > one.count() ? other : one)
                        .map(DayFacts.CardType::key))
                .orElse("");
    }

    private void destination(DayFacts.Destination leg) {
        String use = !leg.onSet() ? NO : leg.encoded() ? ENCODED : AS_RECORDED;
        put(Figure.DESTINATION.key(leg.leg()), use, Begun.Origin.COPY_PLAN, leg.leg());
        String item = leg.itemCode();
        Long rate = leg.writeBytesPerSecond();
        if (item == null || rate == null) {
            put(Figure.WRITE_RATE.key(leg.leg()), USUAL_RATE, Begun.Origin.USUAL, "");
        } else {
            boolean measured = leg.sessions() > 0;
            put(
                    Figure.WRITE_RATE.key(leg.leg()),
                    megabytes(rate),
                    measured ? Begun.Origin.MEASURED : Begun.Origin.MEDIA,
                    measured ? Integer.toString(leg.sessions()) : item);
        }
        if (leg.encoded()) {
            put(Figure.KEPT.key(), Integer.toString(leg.keptPercent()), Begun.Origin.COPY_PLAN, leg.leg());
        }
    }

    private <T> void price(Figure figure, List<T> things, Function<T, @Nullable Long> price, Function<T, String> name) {
        for (T thing : things) {
            Long minor = price.apply(thing);
            if (minor != null) {
                String amount = FigureKind.MONEY.read(money.write(minor));
                put(figure.key(), amount, Begun.Origin.MEDIA, name.apply(thing));
                return;
            }
        }
    }

    private void tonight(DayFacts.Tonight tonight) {
        String call = begun.get(Figure.CALL.key()).value();
        String wrap = begun.get(Figure.WRAP.key()).value();
        put(Figure.CALL.key(), tonight.now(), Begun.Origin.TONIGHT, "");
        if (!isSoonEnough(call, tonight.now(), wrap)) {
            wrap = LocalTime.parse(tonight.now()).plusHours(HOURS_LEFT).toString();
            put(Figure.WRAP.key(), wrap, Begun.Origin.TONIGHT, "");
        }
        String breaks = begun.get(Figure.BREAKS.key()).value();
        if (!breaks.isEmpty()
                && WorkHours.of(tonight.now(), wrap, breaks).breaks().isEmpty()) {
            put(Figure.BREAKS.key(), "", Begun.Origin.TONIGHT, "");
        }
    }

    /** Whether an hour at least is left until the wrap, be it today’s or, of a night’s work, tomorrow’s. */
    private static boolean isSoonEnough(String call, String now, String wrap) {
        LocalTime inAnHour = LocalTime.parse(now).plusHours(1);
        boolean today =
                inAnHour.isAfter(LocalTime.parse(now)) && !LocalTime.parse(wrap).isBefore(inAnHour);
        WorkHours usual = WorkHours.of(call, wrap, "");
        return today || usual.wrapMinutes() - usual.at(now) >= 60;
    }

    private void put(String key, String value, Begun.Origin origin, String source) {
        begun.put(key, new Begun(value, origin, source));
    }

    /** To the tenth: what is measured is no finer. */
    static String megabytes(long bytesPerSecond) {
        BigDecimal megabytes = BigDecimal.valueOf(bytesPerSecond).movePointLeft(DayPlans.MB_DIGITS);
        return FigureKind.NUMBER.read(
                megabytes.setScale(1, RoundingMode.HALF_UP).toPlainString());
    }
}
