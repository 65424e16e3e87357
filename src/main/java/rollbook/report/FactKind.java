package rollbook.report;

import java.util.List;

/** What a line of a report's CSV file speaks of, in the order of the file; each with the columns that tell which one. */
enum FactKind {
    PRODUCTION(),
    DAY(Column.UNIT, Column.DAY),
    /** What a camera was to record. */
    PLAN(Column.UNIT, Column.DAY, Column.CAMERA),
    ROLL(Column.ROLL),
    /** What a person should look at in a roll. */
    REMARK(Column.ROLL, Column.KIND),
    COPY(Column.ROLL, Column.ITEM, Column.RENDITION),
    /** That a medium was cleared or erased, that this was taken back, or that a copy it relied on fell. */
    ACT(Column.STATE, Column.ROLL, Column.ITEM, Column.AT),
    MEDIUM(Column.ITEM),
    /** That somebody signed a day's report. */
    SIGNATURE(Column.UNIT, Column.DAY, Column.BY, Column.AT);

    private final List<Column> key;

    FactKind(Column... key) {
        this.key = List.of(key);
    }

    List<Column> key() {
        return key;
    }
}
