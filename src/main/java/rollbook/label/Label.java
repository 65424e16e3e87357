package rollbook.label;

import java.util.List;

/**
 * What stands on one label.
 *
 * @param codeLines the code, broken where one line would be too small to read
 * @param symbol leads to the item's page
 * @param lines what it is, its model, whose it is and the production, as far as there is room
 */
record Label(String code, List<String> codeLines, QrSymbol symbol, List<String> lines) {

    /** A label at its position on the page, from 1. */
    record Placed(int position, Label label) {}
}
