package rollbook.label;

import com.openhtmltopdf.css.sheet.FontFaceRule;
import com.openhtmltopdf.css.style.CssContext;
import com.openhtmltopdf.extend.OutputDevice;
import com.openhtmltopdf.extend.SVGDrawer;
import com.openhtmltopdf.layout.SharedContext;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.RenderingContext;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.io.File;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/**
 * Draws the paths of an SVG into a PDF, and nothing else of it. They consist of {@code M L H V Z} and {@code h v z}; their
 * colours are the attributes {@code fill} (black if there is none, {@code none} for not filled) and {@code stroke}, six
 * hexadecimal digits each, with {@code stroke-width} and {@code stroke-dasharray} (two lengths) in the units of the view box,
 * which begins at 0 0.
 */
final class PathDrawer implements SVGDrawer {
    private static final Pattern STEP = Pattern.compile("([MLHVhvZz])\\s*([^MLHVhvZz]*)");
    private static final Pattern NUMBERS = Pattern.compile("[\\s,]+");

    @Override
    public SVGImage buildSVGImage(
            Element svg, Box box, CssContext context, double cssWidth, double cssHeight, double dotsPerPixel) {
        double[] view = numbers(svg.getAttribute("viewBox"));
        List<Inked> shapes = new ArrayList<>();
        NodeList paths = svg.getElementsByTagName("path");
        for (int i = 0; i < paths.getLength(); i++) {
            add((Element) paths.item(i), shapes);
        }
        return new Picture(cssWidth, cssHeight, cssWidth / view[2], cssHeight / view[3], shapes);
    }

    private static void add(Element path, List<Inked> shapes) {
        Path2D shape = shape(path.getAttribute("d"));
        String fill = path.getAttribute("fill");
        if (!fill.equals("none")) {
            shapes.add(new Inked(shape, fill.isEmpty() ? Color.BLACK : Color.decode(fill)));
        }
        String stroke = path.getAttribute("stroke");
        if (!stroke.isEmpty() && !stroke.equals("none")) {
            String width = path.getAttribute("stroke-width");
            String dashes = path.getAttribute("stroke-dasharray");
            BasicStroke pen = new BasicStroke(
                    width.isEmpty() ? 1 : Float.parseFloat(width),
                    BasicStroke.CAP_BUTT,
                    BasicStroke.JOIN_MITER,
                    10,
                    dashes.isEmpty() ? null : floats(numbers(dashes)),
                    0);
            shapes.add(new Inked(pen.createStrokedShape(shape), Color.decode(stroke)));
        }
    }

    static Path2D shape(String data) {
        Path2D shape = new Path2D.Double();
        Matcher step = STEP.matcher(data);
        double x = 0;
        double y = 0;
        while (step.find()) {
            char command = step.group(1).charAt(0);
            double[] to = numbers(step.group(2));
            switch (command) {
                case 'Z', 'z' -> {
                    shape.closePath();
                    x = shape.getCurrentPoint().getX();
                    y = shape.getCurrentPoint().getY();
                }
                case 'M' -> {
                    x = to[0];
                    y = to[1];
                    shape.moveTo(x, y);
                }
                default -> {
                    x = switch (command) {
                        case 'L', 'H' -> to[0];
                        case 'h' -> x + to[0];
                        default -> x;
                    };
                    y = switch (command) {
                        case 'L' -> to[1];
                        case 'V' -> to[0];
                        case 'v' -> y + to[0];
                        default -> y;
                    };
                    shape.lineTo(x, y);
                }
            }
        }
        return shape;
    }

    private static double[] numbers(String text) {
        return NUMBERS.splitAsStream(text.strip())
                .filter(number -> !number.isEmpty())
                .mapToDouble(Double::parseDouble)
                .toArray();
    }

    private static float[] floats(double[] numbers) {
        float[] floats = new float[numbers.length];
        for (int i = 0; i < numbers.length; i++) {
            floats[i] = (float) numbers[i];
        }
        return floats;
    }

    private record Inked(Shape shape, Color colour) {}

    private record Picture(double width, double height, double scaleX, double scaleY, List<Inked> shapes)
            implements SVGImage {
        @Override
        public int getIntrinsicWidth() {
            return (int) width;
        }

        @Override
        public int getIntrinsicHeight() {
            return (int) height;
        }

        @Override
        public void drawSVG(OutputDevice device, RenderingContext context, double x, double y) {
            AffineTransform place = AffineTransform.getTranslateInstance(x, y);
            place.scale(scaleX, scaleY);
            for (Inked inked : shapes) {
                device.setPaint(inked.colour());
                device.fill(place.createTransformedShape(inked.shape()));
            }
        }
    }

    @Override
    public void importFontFaceRules(List<FontFaceRule> rules, SharedContext context) {
        // Paths have no text.
    }

    @Override
    public void addFontFile(File file, String family, Integer weight, BaseRendererBuilder.FontStyle style) {
        // Paths have no text.
    }

    @Override
    public void close() {
        // Nothing is held.
    }
}
