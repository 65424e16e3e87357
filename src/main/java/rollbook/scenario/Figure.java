package rollbook.scenario;

import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * What a scenario says about a day. Some are asked once, some of each camera, kind of card, reader or leg. The usual
 * values are common practice, without a source; they only have to be a sensible beginning.
 */
enum Figure {
    CALL(Group.DAY, FigureKind.TIME, "08:00"),
    WRAP(Group.DAY, FigureKind.TIME, "19:00"),
    BREAKS(Group.DAY, FigureKind.SPANS, "13:00-14:00"),

    MINUTES(Group.CAMERAS, FigureKind.NUMBER, 0, 1_440),
    CARD_TYPE(Group.CAMERAS, FigureKind.CHOICE, ""),
    TAKE(Group.CAMERAS, FigureKind.NUMBER, 0.1, 240, "3"),
    TAKE_SPREAD(Group.CAMERAS, FigureKind.NUMBER, 0, 200, "60"),
    FILL(Group.CAMERAS, FigureKind.NUMBER, 1, 100, "85"),
    AT_BREAKS(Group.CAMERAS, FigureKind.CHOICE, "YES"),
    CHANGE(Group.CAMERAS, FigureKind.NUMBER, 0, 60, "2"),

    CARDS(Group.CARDS, FigureKind.COUNT, 0, 999),
    WALK(Group.CARDS, FigureKind.NUMBER, 0, 240, "5"),
    BATCH(Group.CARDS, FigureKind.COUNT, 1, 99, "1"),
    LONGEST_WAIT(Group.CARDS, FigureKind.NUMBER, 0, 720, "30"),
    BACK(Group.CARDS, FigureKind.NUMBER, 0, 240, "5"),

    WAY(Group.STATION, FigureKind.CHOICE, ""),
    EXTRA_READERS(Group.STATION, FigureKind.COUNT, 0, 20, "0"),
    NEW_ADAPTER(Group.STATION, FigureKind.NUMBER, 1, 100_000, "800"),
    HANDLING(Group.STATION, FigureKind.NUMBER, 0, 120, "2"),
    BUS(Group.STATION, FigureKind.NUMBER, 1, 100_000, ""),
    ENCODER(Group.STATION, FigureKind.NUMBER, 1, 100_000, ""),
    ENCODER_FRAMES(Group.STATION, FigureKind.NUMBER, 1, 10_000, ""),
    READ_BACK(Group.STATION, FigureKind.CHOICE, "READER_FREE"),
    READ_BACK_ORDER(Group.STATION, FigureKind.CHOICE, "TOGETHER"),
    CLEARING(Group.STATION, FigureKind.NUMBER, 0, 1_440, "10"),
    WORK_SPREAD(Group.STATION, FigureKind.NUMBER, 0, 200, "20"),
    REPEAT_CHANCE(Group.STATION, FigureKind.NUMBER, 0, 50, "2"),

    DESTINATION(Group.DESTINATIONS, FigureKind.CHOICE, ""),
    WRITE_RATE(Group.DESTINATIONS, FigureKind.NUMBER, 1, 100_000),
    KEPT(Group.DESTINATIONS, FigureKind.NUMBER, 1, 100, "60"),
    WRITING(Group.DESTINATIONS, FigureKind.CHOICE, "TOGETHER"),

    REPEAT(Group.MISHAPS, FigureKind.COUNT, 1, 999, ""),
    READER_DIES(Group.MISHAPS, FigureKind.CHOICE, ""),
    DIES_AT(Group.MISHAPS, FigureKind.TIME, ""),

    CARD_WEEK(Group.MONEY, FigureKind.MONEY, 0, 1_000_000, ""),
    READER_WEEK(Group.MONEY, FigureKind.MONEY, 0, 1_000_000, ""),
    ADAPTER_WEEK(Group.MONEY, FigureKind.MONEY, 0, 1_000_000, ""),
    DRIVE_PRICE(Group.MONEY, FigureKind.MONEY, 0, 10_000_000, ""),
    WEEKS(Group.MONEY, FigureKind.COUNT, 1, 104, "1"),
    BUDGET(Group.MONEY, FigureKind.MONEY, 0, 100_000_000, "");

    /** The parts of the form, in its order. */
    enum Group {
        DAY,
        CAMERAS,
        CARDS,
        STATION,
        DESTINATIONS,
        MISHAPS,
        MONEY
    }

    /** What a figure is asked of. */
    enum Each {
        DAY,
        CAMERA,
        CARD_TYPE,
        READER,
        LEG
    }

    private static final Map<Figure, Each> ASKED_OF = Map.of(
            MINUTES, Each.CAMERA,
            CARD_TYPE, Each.CAMERA,
            CARDS, Each.CARD_TYPE,
            WAY, Each.READER,
            DESTINATION, Each.LEG,
            WRITE_RATE, Each.LEG);
    private static final List<Figure> MAY_BE_EMPTY = List.of(
            BREAKS,
            BUS,
            ENCODER,
            ENCODER_FRAMES,
            REPEAT,
            READER_DIES,
            DIES_AT,
            CARD_WEEK,
            READER_WEEK,
            ADAPTER_WEEK,
            DRIVE_PRICE,
            BUDGET);

    final Group group;
    final FigureKind kind;
    final double least;
    final double most;
    final String usual;

    Figure(Group group, FigureKind kind, double least, double most, String usual) {
        this.group = group;
        this.kind = kind;
        this.least = least;
        this.most = most;
        this.usual = usual;
    }

    Figure(Group group, FigureKind kind, double least, double most) {
        this(group, kind, least, most, "");
    }

    Figure(Group group, FigureKind kind, String usual) {
        this(group, kind, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, usual);
    }

    Each each() {
        return ASKED_OF.getOrDefault(this, Each.DAY);
    }

    /** Whether it is asked of each camera, kind of card, reader or leg. */
    boolean ofEach() {
        return each() != Each.DAY;
    }

    boolean mayBeEmpty() {
        return MAY_BE_EMPTY.contains(this);
    }

    /** The name under which it is sent and kept. */
    String key() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The name under which it is sent and kept for one of the things that it is asked of. */
    String key(String thing) {
        return key() + "." + thing;
    }

    boolean isOf(String key) {
        return key.equals(key()) || ofEach() && key.startsWith(key() + ".");
    }
}
