package rollbook.web;

/**
 * A cell of a CSV file that a spreadsheet program shows and does not run. One that begins with =, +, - or @ (or with what such a
 * program skips before them) would be read as a formula there, so it gets a leading apostrophe, as does one that begins
 * with an apostrophe; reading takes it off again, so that what was written comes back.
 */
public final class SafeCell {
    private static final String MARK = "'";
    private static final String BEGINS_FORMULA = "=+-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20";

    private SafeCell() {}

    public static String write(String text) {
        return needsMark(text) ? MARK + text : text;
    }

    public static String read(String cell) {
        return cell.startsWith(MARK) && needsMark(cell.substring(1)) ? cell.substring(1) : cell;
    }

    private static boolean needsMark(String text) {
        return !text.isEmpty() && (text.startsWith(MARK) || BEGINS_FORMULA.indexOf(text.charAt(0)) >= 0);
    }
}
