package rollbook.label;

/**
 * What to print, as typed.
 *
 * @param items codes and runs of codes, see {@link CodeList}
 * @param sheet name of a {@link SheetKind}
 * @param first position of the first label on a begun sheet
 * @param copies labels of each item
 */
record LabelForm(String items, String sheet, String first, String copies) {}
