package rollbook.manifest;

import java.util.ArrayList;
import java.util.List;

/**
 * A document that can't be read as a manifest: where, why, and what to do. It is an answer to the sender, not a fault
 * of the program, and therefore carries no stack trace.
 */
public final class ManifestException extends Exception {
    private static final int EXCERPT_CHARACTERS = 80;

    private final ManifestProblem problem;
    private final long line;
    private final int column;
    private final List<String> arguments;

    /** Line and column are 1-based. Arguments fill the message; long or unprintable ones are shortened. */
    ManifestException(ManifestProblem problem, long line, int column, Object... arguments) {
        super(null, null, false, false);
        this.problem = problem;
        this.line = line;
        this.column = column;
        List<String> excerpts = new ArrayList<>();
        for (Object argument : arguments) {
            excerpts.add(excerpt(String.valueOf(argument)));
        }
        this.arguments = List.copyOf(excerpts);
    }

    public ManifestProblem problem() {
        return problem;
    }

    public String messageKey() {
        return problem.messageKey();
    }

    public String adviceKey() {
        return problem.adviceKey();
    }

    public long line() {
        return line;
    }

    public int column() {
        return column;
    }

    public List<String> arguments() {
        return arguments;
    }

    /** For logs only. */
    @Override
    public String getMessage() {
        return problem + " at line " + line + ", column " + column + " " + arguments;
    }

    private static String excerpt(String text) {
        StringBuilder excerpt = new StringBuilder();
        text.codePoints().limit(EXCERPT_CHARACTERS).forEach(c -> excerpt.appendCodePoint(printable(c) ? c : 0xFFFD));
        return text.codePointCount(0, text.length()) > EXCERPT_CHARACTERS
                ? excerpt.append('…').toString()
                : excerpt.toString();
    }

    private static boolean printable(int codePoint) {
        return switch (Character.getType(codePoint)) {
            case Character.CONTROL, Character.FORMAT, Character.SURROGATE, Character.UNASSIGNED -> false;
            default -> true;
        };
    }
}
