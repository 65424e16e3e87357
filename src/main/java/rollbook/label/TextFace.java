package rollbook.label;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.springframework.core.io.ClassPathResource;
import org.springframework.stereotype.Component;

/** How wide text is in the face that labels are set in, and so how much of it goes into a line. */
@Component
class TextFace {
    static final String FILE = "fonts/DejaVuSansCondensed.ttf";

    private static final String ELLIPSIS = "…";
    /** What is printed for a letter that the face doesn't have. */
    private static final char SUBSTITUTE = '#';

    /** Of each character of the basic plane, as a part of the text's size. */
    private final float[] widths = new float[Character.MAX_VALUE + 1];

    TextFace() {
        try (TrueTypeFont font =
                new TTFParser().parse(new RandomAccessReadBuffer(new ClassPathResource(FILE).getInputStream()))) {
            CmapLookup glyphs = font.getUnicodeCmapLookup();
            float unit = font.getUnitsPerEm();
            Arrays.fill(widths, font.getAdvanceWidth(glyphs.getGlyphId(SUBSTITUTE)) / unit);
            for (int character = ' '; character < widths.length; character++) {
                int glyph = glyphs.getGlyphId(character);
                if (glyph != 0) {
                    widths[character] = font.getAdvanceWidth(glyph) / unit;
                }
            }
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** As a part of the text's size. */
    double width(String text) {
        double width = 0;
        for (int i = 0; i < text.length(); i++) {
            width += widths[text.charAt(i)];
        }
        return width;
    }

    /**
     * Broken between words where there are any; an ellipsis at the end stands for what is left out.
     *
     * @param width of a line, as a part of the text's size
     */
    List<String> lines(String text, double width, int most) {
        List<String> lines = new ArrayList<>();
        String rest = text.strip();
        while (!rest.isEmpty()) {
            int fits = fitting(rest, width);
            if (fits == rest.length()) {
                lines.add(rest);
                break;
            }
            if (lines.size() == most - 1) {
                lines.add(rest.substring(0, fitting(rest, width - width(ELLIPSIS)))
                                .stripTrailing()
                        + ELLIPSIS);
                break;
            }
            int space = rest.lastIndexOf(' ', fits);
            int cut = space > 0 ? space : Math.max(fits, 1);
            lines.add(rest.substring(0, cut).stripTrailing());
            rest = rest.substring(cut).strip();
        }
        return lines;
    }

    private int fitting(String text, double width) {
        double used = 0;
        int at = 0;
        while (at < text.length() && used + widths[text.charAt(at)] <= width) {
            used += widths[text.charAt(at)];
            at++;
        }
        boolean amidPair = at > 0 && at < text.length() && Character.isHighSurrogate(text.charAt(at - 1));
        return amidPair ? at - 1 : at;
    }
}
