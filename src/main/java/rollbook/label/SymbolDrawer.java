package rollbook.label;

import com.openhtmltopdf.css.sheet.FontFaceRule;
import com.openhtmltopdf.css.style.CssContext;
import com.openhtmltopdf.extend.OutputDevice;
import com.openhtmltopdf.extend.SVGDrawer;
import com.openhtmltopdf.layout.SharedContext;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.RenderingContext;
import java.awt.Color;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.io.File;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.w3c.dom.Element;

/** Draws the SVG of a {@link QrSymbol} into a PDF, and no other. */
final class SymbolDrawer implements SVGDrawer {
    private static final Pattern RUN = Pattern.compile("M(\\d+) (\\d+)h(\\d+)v1h-\\d+z");

    @Override
    public SVGImage buildSVGImage(
            Element svg, Box box, CssContext context, double cssWidth, double cssHeight, double dotsPerPixel) {
        String[] view = svg.getAttribute("viewBox").split(" ");
        double module = cssWidth / Double.parseDouble(view[2]);
        String path = ((Element) svg.getElementsByTagName("path").item(0)).getAttribute("d");
        return new Symbol(cssWidth, module, path);
    }

    private record Symbol(double side, double module, String path) implements SVGImage {
        @Override
        public int getIntrinsicWidth() {
            return (int) side;
        }

        @Override
        public int getIntrinsicHeight() {
            return (int) side;
        }

        @Override
        public void drawSVG(OutputDevice device, RenderingContext context, double x, double y) {
            Path2D dark = new Path2D.Double();
            Matcher run = RUN.matcher(path);
            while (run.find()) {
                double left = x + Integer.parseInt(run.group(1)) * module;
                double top = y + Integer.parseInt(run.group(2)) * module;
                dark.append(new Rectangle2D.Double(left, top, Integer.parseInt(run.group(3)) * module, module), false);
            }
            device.setPaint(Color.BLACK);
            device.fill(dark);
        }
    }

    @Override
    public void importFontFaceRules(List<FontFaceRule> rules, SharedContext context) {
        // A symbol has no text.
    }

    @Override
    public void addFontFile(File file, String family, Integer weight, BaseRendererBuilder.FontStyle style) {
        // A symbol has no text.
    }

    @Override
    public void close() {
        // Nothing is held.
    }
}
