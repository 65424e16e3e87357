package rollbook.label;

import com.openhtmltopdf.extend.FSStream;
import com.openhtmltopdf.extend.FSSupplier;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.outputdevice.helper.ExternalResourceControlPriority;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.slf4j.Slf4jLogger;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import org.springframework.core.io.ClassPathResource;
import org.springframework.stereotype.Component;
import org.thymeleaf.ITemplateEngine;
import org.thymeleaf.context.Context;

/**
 * Prints pages as a PDF that looks alike everywhere, with its letters inside, and tagged so that it can be read aloud. A page
 * is a template in XML to the letter with a language and a title, drawn by CSS 2.1; of an {@code svg} in it the paths are
 * drawn, as {@link PathDrawer} tells.
 */
@Component
public class PdfPress {
    /** The only address that a page may load anything from; it names its style sheet. */
    private static final String OWN = "sheet";

    private final ITemplateEngine templates;

    PdfPress(ITemplateEngine templates) {
        this.templates = templates;
        XRLog.setLoggerImpl(new Slf4jLogger());
    }

    /**
     * @param template links its style sheet as {@code sheet:style.css}
     * @param css may use the families {@code label-text} and, in bold, {@code label-code} for what is spelt out
     */
    public byte[] print(String template, Map<String, Object> model, String css) {
        String page = templates.process(template, new Context(Locale.UK, model));
        ByteArrayOutputStream pdf = new ByteArrayOutputStream();
        try {
            new PdfRendererBuilder()
                    .withHtmlContent(page, null)
                    .useProtocolsStreamImplementation(address -> new Text(css), OWN)
                    .useExternalResourceAccessControl(
                            (address, type) -> address.startsWith(OWN + ":"),
                            ExternalResourceControlPriority.RUN_BEFORE_RESOLVING_URI)
                    .useSVGDrawer(new PathDrawer())
                    .useFont(font("fonts/DejaVuSansMono-Bold.ttf"), SheetStyle.CODE_FACE, 700, FontStyle.NORMAL, true)
                    .useFont(font(TextFace.FILE), SheetStyle.TEXT_FACE, 400, FontStyle.NORMAL, true)
                    .withProducer("Rollbook")
                    .usePdfUaAccessibility(true)
                    .toStream(pdf)
                    .run();
        } catch (IOException inMemory) {
            throw new UncheckedIOException(inMemory);
        }
        return pdf.toByteArray();
    }

    private static FSSupplier<InputStream> font(String name) {
        return () -> {
            try {
                return new ClassPathResource(name).getInputStream();
            } catch (IOException unreadable) {
                throw new UncheckedIOException(unreadable);
            }
        };
    }

    private record Text(String text) implements FSStream {
        @Override
        public InputStream getStream() {
            return new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
        }

        @Override
        public Reader getReader() {
            return new StringReader(text);
        }
    }
}
