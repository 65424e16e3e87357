package rollbook.label;

/**
 * Equal labels in rows and columns on a page; all lengths in millimetres. Labels are numbered along the rows, from 1 at
 * the top left.
 *
 * @param leftMillimetres from the page's edge to the first column
 * @param topMillimetres from the page's edge to the first row
 * @param columnGapMillimetres between two columns
 */
record SheetGrid(
        double pageWidthMillimetres,
        double pageHeightMillimetres,
        int columns,
        int rows,
        double labelWidthMillimetres,
        double labelHeightMillimetres,
        double leftMillimetres,
        double topMillimetres,
        double columnGapMillimetres) {
    /** Machines cut and measure to a tenth at best; this only forgives rounding. */
    private static final double ROUNDING_MILLIMETRES = 0.001;

    /** @throws IllegalArgumentException if the labels don't fit on the page */
    SheetGrid {
        double right = leftMillimetres + columns * labelWidthMillimetres + (columns - 1) * columnGapMillimetres;
        double bottom = topMillimetres + rows * labelHeightMillimetres;
        if (columns < 1
                || rows < 1
                || leftMillimetres < 0
                || topMillimetres < 0
                || columnGapMillimetres < 0
                || right > pageWidthMillimetres + ROUNDING_MILLIMETRES
                || bottom > pageHeightMillimetres + ROUNDING_MILLIMETRES) {
            throw new IllegalArgumentException("labels reach %.2f and %.2f mm on a page of %.2f by %.2f mm"
                    .formatted(right, bottom, pageWidthMillimetres, pageHeightMillimetres));
        }
    }

    /** Labels amid the page, row below row without a gap. */
    static SheetGrid amid(
            double pageWidthMillimetres,
            double pageHeightMillimetres,
            int columns,
            int rows,
            double labelWidthMillimetres,
            double labelHeightMillimetres,
            double columnGapMillimetres) {
        double width = columns * labelWidthMillimetres + (columns - 1) * columnGapMillimetres;
        double height = rows * labelHeightMillimetres;
        return new SheetGrid(
                pageWidthMillimetres,
                pageHeightMillimetres,
                columns,
                rows,
                labelWidthMillimetres,
                labelHeightMillimetres,
                (pageWidthMillimetres - width) / 2,
                (pageHeightMillimetres - height) / 2,
                columnGapMillimetres);
    }

    /** A page that is one label. */
    static SheetGrid single(double widthMillimetres, double heightMillimetres) {
        return amid(widthMillimetres, heightMillimetres, 1, 1, widthMillimetres, heightMillimetres, 0);
    }

    int labelsPerPage() {
        return columns * rows;
    }

    /** From the page's left edge to the label at the position. */
    double leftOf(int position) {
        return leftMillimetres + column(position) * (labelWidthMillimetres + columnGapMillimetres);
    }

    /** From the page's top edge to the label at the position. */
    double topOf(int position) {
        return topMillimetres + row(position) * labelHeightMillimetres;
    }

    /**
     * The pages that so many labels take, if the positions before the first one are used up on the first page.
     *
     * @param first position of the first label, 1 on a fresh page
     */
    int pages(int labels, int first) {
        return labels == 0 ? 0 : (checked(first) - 1 + labels + labelsPerPage() - 1) / labelsPerPage();
    }

    /** The page, from 0, on which the label with the index, from 0, lies. */
    int pageOf(int index, int first) {
        return (checked(first) - 1 + index) / labelsPerPage();
    }

    /** The position, from 1, of the label with the index, from 0, on its page. */
    int positionOf(int index, int first) {
        return (checked(first) - 1 + index) % labelsPerPage() + 1;
    }

    private int column(int position) {
        return (checked(position) - 1) % columns;
    }

    private int row(int position) {
        return (checked(position) - 1) / columns;
    }

    private int checked(int position) {
        if (position < 1 || position > labelsPerPage()) {
            throw new IllegalArgumentException("position " + position + " of " + labelsPerPage());
        }
        return position;
    }
}
