package rollbook.verification;

/** Names that files are sent under: hostile until proven otherwise. */
final class DocumentName {
    private static final int LONGEST = 200;
    private static final int KEPT_END = 40;
    private static final String NAMELESS = "unnamed";

    private DocumentName() {}

    /**
     * The last part of the name, without what can't be shown or would mislead the eye. Very long names lose their
     * middle: the end may tell the algorithm.
     */
    static String shown(String sent) {
        String last = sent.substring(Math.max(sent.lastIndexOf('/'), sent.lastIndexOf('\\')) + 1);
        int[] letters =
                last.codePoints().filter(DocumentName::printable).limit(65_536).toArray();
        String name = new String(letters, 0, letters.length).strip();
        if (name.isEmpty() || name.equals(".") || name.equals("..")) {
            return NAMELESS;
        }
        int[] kept = name.codePoints().toArray();
        return kept.length <= LONGEST
                ? name
                : new String(kept, 0, LONGEST - KEPT_END) + "…" + new String(kept, kept.length - KEPT_END, KEPT_END);
    }

    /** The whole name as it was sent; what can't be shown is written as a number. */
    static String exact(String sent) {
        StringBuilder exact = new StringBuilder();
        sent.codePoints().forEach(letter -> {
            if (printable(letter)) {
                exact.appendCodePoint(letter);
            } else {
                exact.append("\\u{%x}".formatted(letter));
            }
        });
        return exact.toString();
    }

    static boolean printable(int codePoint) {
        return switch (Character.getType(codePoint)) {
            case Character.CONTROL,
                    Character.FORMAT,
                    Character.SURROGATE,
                    Character.UNASSIGNED,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR -> false;
            default -> true;
        };
    }
}
