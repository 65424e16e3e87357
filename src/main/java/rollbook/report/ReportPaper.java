package rollbook.report;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.springframework.core.io.ClassPathResource;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Component;
import rollbook.label.PdfPress;
import rollbook.web.FileAnswer;

/** Prints reports on A4, and hands them out as files. */
@Component
class ReportPaper {

    private final PdfPress press;
    private final String style;

    ReportPaper(PdfPress press) {
        this.press = press;
        try {
            style = new ClassPathResource("templates/report/paper.css").getContentAsString(StandardCharsets.UTF_8);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** @param view under that name in the template */
    ResponseEntity<byte[]> print(String template, Object view, String fileName) {
        return FileAnswer.shown(
                fileName, MediaType.APPLICATION_PDF, press.print(template, Map.of("view", view), style));
    }

    static ResponseEntity<byte[]> csv(byte[] bytes, String fileName) {
        return FileAnswer.shown(fileName, FileAnswer.CSV, bytes);
    }
}
