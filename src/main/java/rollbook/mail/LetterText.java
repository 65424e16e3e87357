package rollbook.mail;

import java.util.List;

/**
 * Writes letters as plain text and as HTML without its frame. What leads to the portal begins with a placeholder, for
 * its address is known when the message is sent.
 */
final class LetterText {
    /** Stands for the portal's address. */
    static final String PORTAL = "{portal}";

    private static final int WIDTH = 74;

    private LetterText() {}

    static String plain(Letter letter) {
        StringBuilder text = new StringBuilder();
        wrap(text, "", letter.sentence());
        for (Letter.Part part : letter.parts()) {
            text.append('\n').append(part.title()).append('\n');
            for (Letter.Line line : part.lines()) {
                wrap(text, "- ", line.text());
                if (line.path() != null) {
                    text.append("  ").append(PORTAL).append(line.path()).append('\n');
                }
            }
        }
        return text.toString();
    }

    /** A line that is too long goes on under its first word; a word that is too long stays whole. */
    private static void wrap(StringBuilder text, String bullet, String words) {
        text.append(bullet);
        int column = bullet.length();
        boolean first = true;
        for (String word : List.of(words.strip().split("\\s+"))) {
            int length = word.codePointCount(0, word.length());
            if (!first && column + 1 + length > WIDTH) {
                text.append('\n').append(" ".repeat(bullet.length()));
                column = bullet.length();
            } else if (!first) {
                text.append(' ');
                column++;
            }
            text.append(word);
            column += length;
            first = false;
        }
        text.append('\n');
    }

    static String html(Letter letter) {
        StringBuilder html = new StringBuilder();
        html.append("<p>").append(escaped(letter.sentence())).append("</p>\n");
        for (Letter.Part part : letter.parts()) {
            html.append("<h2>").append(escaped(part.title())).append("</h2>\n<ul>\n");
            for (Letter.Line line : part.lines()) {
                html.append("<li>").append(linked(line)).append("</li>\n");
            }
            html.append("</ul>\n");
        }
        return html.toString();
    }

    private static String linked(Letter.Line line) {
        return line.path() == null
                ? escaped(line.text())
                : "<a href=\"%s%s\">%s</a>".formatted(PORTAL, escaped(line.path()), escaped(line.text()));
    }

    static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;")
                .replace("'", "&#39;");
    }
}
