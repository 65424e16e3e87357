package rollbook.label;

import java.util.ArrayList;
import java.util.List;

/**
 * Where things stand on a label: the symbol at the left, as high as the label lets it; the code in large letters beside
 * it, with lines of lesser text below. All lengths in millimetres.
 */
record LabelLayout(
        double sidePaddingMillimetres,
        double topPaddingMillimetres,
        double symbolMillimetres,
        double wordsWidthMillimetres,
        double wordsHeightMillimetres,
        double lineMillimetres) {
    /** Longest code that an item may have. */
    static final int LONGEST_CODE = 32;

    static final int MOST_MODEL_LINES = 2;
    /** What it is, its model, whose it is, the production. */
    static final int LINES_BELOW = 3 + MOST_MODEL_LINES;
    /** Office printers leave this much of a page's edge white. Common practice; no source. */
    private static final double UNPRINTED_MILLIMETRES = 5;

    private static final double LEAST_PADDING_MILLIMETRES = 2;
    private static final double LARGEST_SYMBOL_SHARE = 0.45;
    private static final double CODE_SHARE = 0.35;
    private static final double LARGEST_LINE_MILLIMETRES = 4.5;
    /** Lower lines on narrow labels, so that some twenty letters go into each. */
    private static final double LARGEST_LINE_SHARE = 1 / 9.0;
    /** Size of the text, as a part of its line's height. */
    private static final double TEXT_SHARE = 0.8;
    /** Between the symbol with its quiet zone and the words. */
    static final double GAP_MILLIMETRES = 0.5;

    private static final int MOST_CODE_LINES = 3;
    /** About ten points; a code that would be smaller on one line is broken. */
    private static final double READABLE_MILLIMETRES = 3.5;
    /** Width of a letter of the monospaced face, as a part of its size; measured in the font. */
    private static final double LETTER_WIDTH = 0.603;
    /** Height of a line of the code, as a part of its size. */
    static final double LINE_HEIGHT = 1.15;

    /** @param sizeMillimetres of its letters */
    record Code(int lettersPerLine, double sizeMillimetres) {}

    static LabelLayout of(SheetGrid grid) {
        boolean page = grid.labelsPerPage() > 1;
        double side = page ? padding(grid.leftMillimetres()) : LEAST_PADDING_MILLIMETRES;
        double top = page ? padding(grid.topMillimetres()) : LEAST_PADDING_MILLIMETRES;
        double width = grid.labelWidthMillimetres() - 2 * side;
        double height = grid.labelHeightMillimetres() - 2 * top;
        double symbol = Math.min(height, LARGEST_SYMBOL_SHARE * width);
        double words = width - symbol - GAP_MILLIMETRES;
        double line = Math.min((1 - CODE_SHARE) * height / LINES_BELOW, LARGEST_LINE_MILLIMETRES);
        return new LabelLayout(side, top, symbol, words, height, Math.min(line, LARGEST_LINE_SHARE * words));
    }

    /** What keeps a label's print off the edge of the page; also inside, so that all labels look alike. */
    private static double padding(double marginMillimetres) {
        return Math.max(LEAST_PADDING_MILLIMETRES, UNPRINTED_MILLIMETRES - marginMillimetres);
    }

    double textMillimetres() {
        return TEXT_SHARE * lineMillimetres;
    }

    /** Width of a line of text, as a part of the text's size. */
    double lineWidth() {
        return wordsWidthMillimetres / textMillimetres();
    }

    /** On as few lines as keep it readable, else as large as it gets. */
    Code code(int letters) {
        Code largest = code(letters, 1);
        for (int lines = 2; lines <= MOST_CODE_LINES && largest.sizeMillimetres() < READABLE_MILLIMETRES; lines++) {
            Code broken = code(letters, lines);
            largest = broken.sizeMillimetres() > largest.sizeMillimetres() ? broken : largest;
        }
        return largest;
    }

    private Code code(int letters, int lines) {
        int perLine = (letters + lines - 1) / lines;
        double byWidth = wordsWidthMillimetres / (perLine * LETTER_WIDTH);
        double byHeight = CODE_SHARE * wordsHeightMillimetres / (lines * LINE_HEIGHT);
        return new Code(perLine, Math.min(byWidth, byHeight));
    }

    List<String> lines(String code) {
        int perLine = code(code.length()).lettersPerLine();
        List<String> lines = new ArrayList<>();
        for (int from = 0; from < code.length(); from += perLine) {
            lines.add(code.substring(from, Math.min(from + perLine, code.length())));
        }
        return lines;
    }
}
