package rollbook.manifest;

import org.jspecify.annotations.Nullable;

/** Bounds what is kept of a hash list beside its files: a hostile one could name authors without end. */
final class MhlBudget {
    private static final long MAX_CHARACTERS = 4_000_000;
    private static final int PER_ITEM = 64;

    private final XmlCursor xml;
    private long spent;

    MhlBudget(XmlCursor xml) {
        this.xml = xml;
    }

    void spend(@Nullable String... texts) throws ManifestException {
        spent += PER_ITEM;
        for (String text : texts) {
            spent += text == null ? 0 : text.length();
        }
        if (spent > MAX_CHARACTERS) {
            throw xml.problem(ManifestProblem.XML_EXCESSIVE);
        }
    }
}
