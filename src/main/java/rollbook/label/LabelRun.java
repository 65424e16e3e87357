package rollbook.label;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Labels in the order in which they are printed.
 *
 * @param first position of the first one on its sheet
 */
record LabelRun(List<Label> labels, SheetKind sheet, int first) {
    int pages() {
        return sheet.grid().pages(labels.size(), first);
    }

    /** The labels page by page. */
    List<List<Label.Placed>> placed() {
        SheetGrid grid = sheet.grid();
        List<List<Label.Placed>> pages = IntStream.range(0, pages())
                .<List<Label.Placed>>mapToObj(page -> new ArrayList<>())
                .toList();
        for (int index = 0; index < labels.size(); index++) {
            pages.get(grid.pageOf(index, first))
                    .add(new Label.Placed(grid.positionOf(index, first), labels.get(index)));
        }
        return pages;
    }
}
