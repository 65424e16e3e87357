package rollbook.scenario;

import java.util.List;

/**
 * A day as bars over time. Places are percentages of the width, so that a page, a phone and paper each stretch it as they
 * like and the words stay as they are.
 *
 * @param hours where whole hours lie
 * @param marks lines across all lanes, such as the wrap
 * @param kinds the styles that are used, in the order of a card's way, for the key
 */
record TimelinePicture(List<Mark> hours, List<Mark> marks, List<Group> groups, List<Kind> kinds) {

    /** A place on the axis and what stands there. */
    record Mark(String x, String label) {}

    /** How a kind of activity is drawn, and its word. */
    record Kind(String style, String word) {}

    /** @param rest what is left out, in words; empty if nothing is */
    record Group(String title, List<Lane> lanes, String rest) {}

    record Lane(String name, int height, List<Bar> bars) {}

    /**
     * @param style of its kind
     * @param word written into it; empty where there is no room
     * @param says its figures, for who points at it or reaches it by keyboard
     */
    record Bar(
            String x,
            String width,
            int y,
            int height,
            String style,
            String word,
            String wordX,
            String says,
            Cells cells) {}

    /** The same as cells of a table. */
    record Cells(String activity, String from, String to, String length, String card) {}
}
