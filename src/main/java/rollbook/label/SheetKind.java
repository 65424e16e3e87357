package rollbook.label;

import java.util.Arrays;
import java.util.Optional;

/** The label sheets and label printers that are catered for, by their measures. Common practice; no source. */
enum SheetKind {
    A4_24(SheetGrid.amid(210, 297, 3, 8, 70, 37, 0)),
    A4_14(SheetGrid.amid(210, 297, 2, 7, 99.1, 38.1, 2.5)),
    A4_40(SheetGrid.amid(210, 297, 4, 10, 48.5, 25.4, 0)),
    LETTER_30(SheetGrid.amid(215.9, 279.4, 3, 10, 66.675, 25.4, 3.175)),
    SINGLE_62(SheetGrid.single(62, 29)),
    SINGLE_50(SheetGrid.single(50, 30)),
    SINGLE_100(SheetGrid.single(100, 50));

    private final SheetGrid grid;

    SheetKind(SheetGrid grid) {
        this.grid = grid;
    }

    SheetGrid grid() {
        return grid;
    }

    /** One label a page: there is no begun sheet. */
    boolean single() {
        return grid.labelsPerPage() == 1;
    }

    static Optional<SheetKind> named(String name) {
        return Arrays.stream(values()).filter(kind -> kind.name().equals(name)).findFirst();
    }
}
