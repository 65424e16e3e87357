package rollbook.testing;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.LuminanceSource;
import com.google.zxing.NotFoundException;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.ReaderException;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripperByArea;

/** A PDF as a printer would put it on paper: its pages as pixels, and what can be read of them. */
public final class RenderedPdf implements AutoCloseable {
    private static final int DOTS_PER_INCH = 300;
    private static final double[] DISTANCES = {1, 1.5, 2.3, 0.8};
    private static final double MILLIMETRES_PER_INCH = 25.4;
    private static final double POINTS_PER_INCH = 72;

    private final PDDocument document;
    private final PDFRenderer renderer;
    private final List<Optional<BufferedImage>> images;

    public RenderedPdf(byte[] pdf) throws IOException {
        document = Loader.loadPDF(pdf);
        renderer = new PDFRenderer(document);
        images = new ArrayList<>(java.util.Collections.nCopies(document.getNumberOfPages(), Optional.empty()));
    }

    public int pages() {
        return document.getNumberOfPages();
    }

    public double widthMillimetres() {
        return document.getPage(0).getMediaBox().getWidth() / POINTS_PER_INCH * MILLIMETRES_PER_INCH;
    }

    public double heightMillimetres() {
        return document.getPage(0).getMediaBox().getHeight() / POINTS_PER_INCH * MILLIMETRES_PER_INCH;
    }

    public BufferedImage image(int page) throws IOException {
        if (images.get(page).isEmpty()) {
            images.set(page, Optional.of(renderer.renderImageWithDPI(page, DOTS_PER_INCH, ImageType.GRAY)));
        }
        return images.get(page).get();
    }

    /** The text inside of a rectangle in millimetres from the top left. */
    public String text(int page, Rectangle2D millimetres) throws IOException {
        double scale = POINTS_PER_INCH / MILLIMETRES_PER_INCH;
        PDFTextStripperByArea stripper = new PDFTextStripperByArea();
        stripper.addRegion(
                "label",
                new Rectangle2D.Double(
                        millimetres.getX() * scale,
                        millimetres.getY() * scale,
                        millimetres.getWidth() * scale,
                        millimetres.getHeight() * scale));
        stripper.extractRegions(document.getPage(page));
        return stripper.getTextForRegion("label").strip();
    }

    /**
     * What a reader of QR codes makes of a rectangle in millimetres from the top left; empty if it finds none. It looks from
     * several distances, as a hand with a phone does: from one alone the reader misjudges one code in a hundred.
     */
    public Optional<String> qr(int page, Rectangle2D millimetres) throws IOException {
        BufferedImage cut = cut(page, millimetres);
        boolean found = false;
        for (double scale : DISTANCES) {
            try {
                return Optional.of(new QRCodeReader()
                        .decode(
                                new BinaryBitmap(new HybridBinarizer(grey(cut, scale))),
                                Map.of(DecodeHintType.TRY_HARDER, true))
                        .getText());
            } catch (NotFoundException none) {
                // Perhaps from another distance.
            } catch (ReaderException unreadable) {
                found = true;
            }
        }
        if (found) {
            throw new AssertionError("a QR code that can't be read at " + millimetres);
        }
        return Optional.empty();
    }

    private static LuminanceSource grey(BufferedImage image, double scale) {
        int width = (int) (image.getWidth() * scale);
        int height = (int) (image.getHeight() * scale);
        BufferedImage scaled = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D pen = scaled.createGraphics();
        pen.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        pen.drawImage(image, 0, 0, width, height, null);
        pen.dispose();
        return new RGBLuminanceSource(width, height, scaled.getRGB(0, 0, width, height, null, 0, width));
    }

    /** The part of the rectangle that isn't white, in millimetres; empty if all of it is. */
    public Optional<Rectangle2D> inked(int page, Rectangle2D millimetres) throws IOException {
        BufferedImage cut = cut(page, millimetres);
        Rectangle2D inked = null;
        for (int y = 0; y < cut.getHeight(); y++) {
            for (int x = 0; x < cut.getWidth(); x++) {
                if ((cut.getRGB(x, y) & 0xff) < 0x80) {
                    Rectangle2D pixel = new Rectangle2D.Double(x, y, 1, 1);
                    inked = inked == null ? pixel : inked.createUnion(pixel);
                }
            }
        }
        double scale = MILLIMETRES_PER_INCH / DOTS_PER_INCH;
        return Optional.ofNullable(inked)
                .map(found -> new Rectangle2D.Double(
                        found.getX() * scale,
                        found.getY() * scale,
                        found.getWidth() * scale,
                        found.getHeight() * scale));
    }

    public boolean embedsItsFonts() throws IOException {
        List<PDFont> fonts = new ArrayList<>();
        for (PDPage page : document.getPages()) {
            for (COSName name : page.getResources().getFontNames()) {
                fonts.add(page.getResources().getFont(name));
            }
        }
        return !fonts.isEmpty() && fonts.stream().allMatch(PDFont::isEmbedded);
    }

    private BufferedImage cut(int page, Rectangle2D millimetres) throws IOException {
        double scale = DOTS_PER_INCH / MILLIMETRES_PER_INCH;
        BufferedImage whole = image(page);
        int left = (int) Math.round(millimetres.getX() * scale);
        int top = (int) Math.round(millimetres.getY() * scale);
        int width = Math.min((int) Math.round(millimetres.getWidth() * scale), whole.getWidth() - left);
        int height = Math.min((int) Math.round(millimetres.getHeight() * scale), whole.getHeight() - top);
        return whole.getSubimage(left, top, width, height);
    }

    @Override
    public void close() throws IOException {
        document.close();
    }
}
