package rollbook.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;

/** What can be read of a report's PDF; it leaves the file to be looked at. */
final class ReportPdf implements AutoCloseable {
    private static final Path LOOK_AT = Path.of("target/reports");

    private final PDDocument document;

    ReportPdf(byte[] bytes, String name) throws IOException {
        Files.createDirectories(LOOK_AT);
        Files.write(LOOK_AT.resolve(name), bytes);
        document = Loader.loadPDF(bytes);
    }

    int pages() {
        return document.getNumberOfPages();
    }

    String text() throws IOException {
        return new PDFTextStripper().getText(document);
    }

    String title() {
        return document.getDocumentInformation().getTitle();
    }

    String language() {
        return document.getDocumentCatalog().getLanguage();
    }

    boolean isTagged() {
        return document.getDocumentCatalog().getMarkInfo() != null
                && document.getDocumentCatalog().getMarkInfo().isMarked();
    }

    /** Whether a reader shows the title and not the file's name. */
    boolean showsItsTitle() {
        return document.getDocumentCatalog().getViewerPreferences() != null
                && document.getDocumentCatalog().getViewerPreferences().displayDocTitle();
    }

    boolean embedsItsFonts() throws IOException {
        List<PDFont> fonts = new ArrayList<>();
        for (PDPage page : document.getPages()) {
            for (COSName name : page.getResources().getFontNames()) {
                fonts.add(page.getResources().getFont(name));
            }
        }
        return !fonts.isEmpty() && fonts.stream().allMatch(PDFont::isEmbedded);
    }

    /** The types of all elements of the structure, from the top down. */
    List<String> structure() {
        List<String> types = new ArrayList<>();
        collect(document.getDocumentCatalog().getStructureTreeRoot(), types);
        return types;
    }

    private static void collect(PDStructureNode node, List<String> types) {
        for (Object kid : node.getKids()) {
            if (kid instanceof PDStructureElement element) {
                types.add(element.getStructureType());
                collect(element, types);
            }
        }
    }

    @Override
    public void close() throws IOException {
        document.close();
    }
}
