package rollbook.label;

import java.util.Locale;
import java.util.function.DoubleFunction;

/**
 * The style sheet of a sheet of labels: the same rules on paper, where lengths are millimetres, and on a screen, where
 * they are shares of the width that the sheet is given.
 */
final class SheetStyle {
    /** A page that is filled to its last hundredth may be followed by an empty one. */
    private static final double PAGE_END_MILLIMETRES = 0.5;

    static final String CODE_FACE = "label-code";
    static final String TEXT_FACE = "label-text";
    /**
     * On a screen the letters of the paper would weigh ten times what all else does, so it makes do with those that are
     * there. The narrow ones of a common face are as wide as the paper's.
     */
    private static final String FACE = "font-family: %s; src: %s; font-weight: %s";

    private static final String CODE_FACES = "local(\"DejaVu Sans Mono Bold\"), local(\"Liberation Mono Bold\"),"
            + " local(\"Menlo Bold\"), local(\"Consolas Bold\"), local(\"Courier New Bold\")";
    private static final String TEXT_FACES = "local(\"DejaVu Sans Condensed\"), local(\"Liberation Sans\"),"
            + " local(\"Helvetica\"), local(\"Arial\"), local(\"Roboto\")";

    private final SheetGrid grid;
    private final LabelLayout layout;
    private final DoubleFunction<String> length;
    private final StringBuilder css = new StringBuilder();

    private SheetStyle(SheetKind kind, DoubleFunction<String> length) {
        grid = kind.grid();
        layout = LabelLayout.of(grid);
        this.length = length;
    }

    static String onPaper(SheetKind kind) {
        SheetStyle style = new SheetStyle(kind, millimetres -> number(millimetres) + "mm");
        SheetGrid grid = style.grid;
        style.rule(
                "@page",
                "margin: 0; size: %smm %smm",
                number(grid.pageWidthMillimetres()),
                number(grid.pageHeightMillimetres()));
        style.rule("body", "margin: 0");
        style.rule(".label-sheet", "height: %s", style.at(grid.pageHeightMillimetres() - PAGE_END_MILLIMETRES));
        style.rule(".label-sheet + .label-sheet", "page-break-before: always");
        return style.labels();
    }

    static String onScreen(SheetKind kind) {
        double width = kind.grid().pageWidthMillimetres();
        SheetStyle style = new SheetStyle(kind, millimetres -> number(millimetres / width * 100) + "cqw");
        style.rule(
                ".label-frame",
                "container-type: inline-size; max-width: %smm; margin-bottom: var(--step)",
                number(width));
        style.rule(
                ".label-sheet",
                "height: %s; outline: 1px solid var(--hairline)",
                style.at(kind.grid().pageHeightMillimetres()));
        style.rule(".label-one", "outline: 1px dashed #999");
        style.rule("@font-face", FACE, CODE_FACE, CODE_FACES, "bold");
        style.rule("@font-face", FACE, TEXT_FACE, TEXT_FACES, "normal");
        return style.labels();
    }

    private String labels() {
        rule(
                ".label-sheet",
                "position: relative; width: %s; background: #fff; color: #000",
                at(grid.pageWidthMillimetres()));
        rule(
                ".label-one",
                "position: absolute; width: %s; height: %s; overflow: hidden",
                at(grid.labelWidthMillimetres()),
                at(grid.labelHeightMillimetres()));
        rule(
                ".label-symbol",
                "position: absolute; left: %s; top: %s; width: %s; height: %s",
                at(layout.sidePaddingMillimetres()),
                at(layout.topPaddingMillimetres()),
                at(layout.symbolMillimetres()),
                at(layout.symbolMillimetres()));
        rule(
                ".label-words",
                "position: absolute; left: %s; top: %s; width: %s; height: %s; overflow: hidden",
                at(layout.sidePaddingMillimetres() + layout.symbolMillimetres() + LabelLayout.GAP_MILLIMETRES),
                at(layout.topPaddingMillimetres()),
                at(layout.wordsWidthMillimetres()),
                at(layout.wordsHeightMillimetres()));
        rule(
                ".label-code",
                "margin: 0; font-family: %s; font-weight: bold; white-space: nowrap",
                CODE_FACE + ", monospace");
        rule(
                ".label-line",
                "margin: 0; font-family: %s; font-size: %s; line-height: %s; white-space: nowrap",
                TEXT_FACE + ", sans-serif",
                at(layout.textMillimetres()),
                at(layout.lineMillimetres()));
        for (int letters = 1; letters <= LabelLayout.LONGEST_CODE; letters++) {
            double size = layout.code(letters).sizeMillimetres();
            rule(
                    ".label-code.of-" + letters,
                    "font-size: %s; line-height: %s",
                    at(size),
                    at(LabelLayout.LINE_HEIGHT * size));
        }
        for (int position = 1; position <= grid.labelsPerPage(); position++) {
            rule(".label-one.at-" + position, "left: %s; top: %s", at(grid.leftOf(position)), at(grid.topOf(position)));
        }
        return css.toString();
    }

    private void rule(String selector, String declarations, Object... values) {
        css.append(selector)
                .append(" { ")
                .append(declarations.formatted(values))
                .append("; }\n");
    }

    private String at(double millimetres) {
        return length.apply(millimetres);
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.4f", value);
    }
}
