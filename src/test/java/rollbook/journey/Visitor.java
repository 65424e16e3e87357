package rollbook.journey;

import java.nio.file.Path;
import java.util.List;

/** Uses the portal by what a person sees: texts of links and buttons, labels of fields. */
interface Visitor extends AutoCloseable {
    /** Types an address. */
    void open(String path);

    /** Goes to one of the places of the main navigation. */
    void goTo(String place);

    /** Follows the first link with this text. */
    void follow(String text);

    void fill(String label, String value);

    /** Chooses the first option whose text contains the given one. */
    void choose(String label, String option);

    void tick(String label);

    void attach(String label, List<Path> files);

    /** Presses the button and waits for the answer. */
    void press(String button);

    /** Types a code into the box that takes any code. */
    void find(String code);

    /** Loads the page again. */
    void reload();

    /** The one or two lines under the heading that answer the page's question. */
    String sentence();

    /** All that can be read on the page. */
    String text();

    @Override
    void close();
}
