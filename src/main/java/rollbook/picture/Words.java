package rollbook.picture;

/**
 * Words at a place of a picture.
 *
 * @param anchor {@code start}, {@code middle} or {@code end}: what of the words lies at x
 * @param style classes of the style sheet, such as {@code tick}
 */
public record Words(double x, double y, String anchor, String style, String text) {}
