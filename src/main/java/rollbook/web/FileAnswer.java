package rollbook.web;

import jakarta.servlet.http.HttpServletResponse;
import java.nio.charset.StandardCharsets;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;

/** Files as answers: to be kept, or to be looked at in the browser. */
public final class FileAnswer {
    public static final MediaType CSV = new MediaType("text", "csv", StandardCharsets.UTF_8);

    private FileAnswer() {}

    /** @param name under which the browser keeps it */
    public static <T> ResponseEntity<T> kept(String name, MediaType type, T body) {
        return file(ContentDisposition.attachment().filename(name).build(), type, body);
    }

    /** @param name under which a person may keep it */
    public static <T> ResponseEntity<T> shown(String name, MediaType type, T body) {
        return file(ContentDisposition.inline().filename(name).build(), type, body);
    }

    private static <T> ResponseEntity<T> file(ContentDisposition disposition, MediaType type, T body) {
        return ResponseEntity.ok()
                .contentType(type)
                .header(HttpHeaders.CONTENT_DISPOSITION, disposition.toString())
                .body(body);
    }

    /** Begins a table to be kept that is written to the response as it comes. */
    public static void startCsv(HttpServletResponse response, String name) {
        response.setContentType("text/csv");
        response.setCharacterEncoding(StandardCharsets.UTF_8.name());
        response.setHeader(
                HttpHeaders.CONTENT_DISPOSITION,
                ContentDisposition.attachment().filename(name).build().toString());
    }
}
