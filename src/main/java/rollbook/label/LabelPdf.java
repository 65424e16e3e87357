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

/** Sheets of labels as a PDF in its own size, with its letters inside, so that it looks alike everywhere. */
@Component
class LabelPdf {
    /** The only address that the page may load anything from; it names the sheet's style. */
    private static final String OWN = "sheet";

    private final ITemplateEngine templates;

    LabelPdf(ITemplateEngine templates) {
        this.templates = templates;
        XRLog.setLoggerImpl(new Slf4jLogger());
    }

    byte[] of(LabelRun run) {
        Context model = new Context(Locale.UK, Map.of("pages", run.placed()));
        String page = templates.process("label/paper", model);
        String style = SheetStyle.onPaper(run.sheet());
        ByteArrayOutputStream pdf = new ByteArrayOutputStream();
        try {
            new PdfRendererBuilder()
                    .withHtmlContent(page, null)
                    .useProtocolsStreamImplementation(address -> new Text(style), OWN)
                    .useExternalResourceAccessControl(
                            (address, type) -> address.startsWith(OWN + ":"),
                            ExternalResourceControlPriority.RUN_BEFORE_RESOLVING_URI)
                    .useSVGDrawer(new SymbolDrawer())
                    .useFont(
                            font("static/fonts/DejaVuSansMono-Bold.ttf"),
                            SheetStyle.CODE_FACE,
                            700,
                            FontStyle.NORMAL,
                            true)
                    .useFont(font(TextFace.FILE), SheetStyle.TEXT_FACE, 400, FontStyle.NORMAL, true)
                    .withProducer("Rollbook")
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
