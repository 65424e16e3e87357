package rollbook.report;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.springframework.core.io.ClassPathResource;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Component;
import rollbook.label.PdfPress;

/** Prints reports on A4, and hands them out as files. */
@Component
class ReportPaper {
    static final MediaType CSV = new MediaType("text", "csv", StandardCharsets.UTF_8);

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
        return file(press.print(template, Map.of("view", view), style), MediaType.APPLICATION_PDF, fileName);
    }

    static ResponseEntity<byte[]> csv(byte[] bytes, String fileName) {
        return file(bytes, CSV, fileName);
    }

    private static ResponseEntity<byte[]> file(byte[] bytes, MediaType type, String fileName) {
        return ResponseEntity.ok()
                .contentType(type)
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        ContentDisposition.inline().filename(fileName).build().toString())
                .body(bytes);
    }
}
