package rollbook.journey;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpHeaders;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jsoup.Connection;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.jsoup.nodes.FormElement;

/** A person without JavaScript: plain requests, forms filled by their labels. */
final class HttpVisitor implements Visitor {
    private static final int TIMEOUT_MILLIS = 120_000;

    private final String base;
    private final Connection session;
    private final List<Attachment> attachments = new ArrayList<>();
    private Document page = new Document("");
    private int status;

    HttpVisitor(String base) {
        this.base = base;
        this.session = Jsoup.newSession()
                .followRedirects(true)
                .ignoreHttpErrors(true)
                .timeout(TIMEOUT_MILLIS)
                .maxBodySize(0);
    }

    private record Attachment(String field, Path file) {}

    @Override
    public void open(String path) {
        request(session.newRequest().url(base + path).method(Connection.Method.GET));
    }

    @Override
    public void goTo(String place) {
        follow(place);
    }

    @Override
    public void follow(String text) {
        Element link = page.select("a[href]").stream()
                .filter(candidate -> candidate.text().equals(text))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no link '" + text + "' on: " + text()));
        request(session.newRequest().url(link.absUrl("href")).method(Connection.Method.GET));
    }

    @Override
    public void fill(String label, String value) {
        field(label).val(value);
    }

    @Override
    public void choose(String label, String option) {
        Element select = field(label);
        Element chosen = select.select("option").stream()
                .filter(candidate -> candidate.text().contains(option))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no option '" + option + "' in "
                        + select.select("option").eachText()));
        select.select("option").removeAttr("selected");
        chosen.attr("selected", true);
    }

    @Override
    public void tick(String label) {
        field(label).attr("checked", true);
    }

    @Override
    public void attach(String label, List<Path> files) {
        String name = field(label).attr("name");
        files.forEach(file -> attachments.add(new Attachment(name, file)));
    }

    @Override
    public void press(String button) {
        Element pressed = page.select("main button, main input[type=submit], header button").stream()
                .filter(candidate -> candidate.text().equals(button))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no button '" + button + "' on: " + text()));
        FormElement form = (FormElement) pressed.closest("form");
        Connection request = form.submit();
        if (pressed.hasAttr("name")) {
            request.data(pressed.attr("name"), pressed.attr("value"));
        }
        if (pressed.hasAttr("formaction")) {
            request.url(pressed.absUrl("formaction"));
        }
        List<InputStream> open = new ArrayList<>();
        try {
            for (Attachment attachment : attachments) {
                InputStream bytes = Files.newInputStream(attachment.file());
                open.add(bytes);
                request.data(attachment.field(), attachment.file().getFileName().toString(), bytes);
            }
            attachments.clear();
            request(request);
            for (InputStream bytes : open) {
                bytes.close();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void find(String code) {
        request(session.newRequest()
                .url(page.select("form.find").first().absUrl("action"))
                .data("code", code)
                .method(Connection.Method.GET));
    }

    @Override
    public void reload() {
        request(session.newRequest().url(page.location()).method(Connection.Method.GET));
    }

    @Override
    public String sentence() {
        return page.select("#sentence").text();
    }

    @Override
    public String text() {
        return page.select("main").text();
    }

    /** The cells of each row of the table below a heading. */
    List<List<String>> rowsUnder(String heading) {
        Element section = page.select("section").stream()
                .filter(candidate -> candidate.select("h2").text().equals(heading))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no heading '" + heading + "' on: " + text()));
        return section.select("tbody tr").stream()
                .map(row -> row.select("th, td").eachText())
                .toList();
    }

    /** The page at the address as it is sent; empty if it isn't a page but a file. */
    Optional<Document> page(String path) {
        try {
            Connection.Response response = session.newRequest()
                    .url(base + path)
                    .ignoreContentType(true)
                    .execute();
            return String.valueOf(response.contentType()).startsWith("text/html")
                    ? Optional.of(response.parse())
                    : Optional.empty();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    byte[] download(String address) {
        try {
            return session.newRequest()
                    .url(address)
                    .ignoreContentType(true)
                    .execute()
                    .bodyAsBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    int status() {
        return status;
    }

    String address() {
        return page.location();
    }

    @Override
    public void close() {
        // Nothing is kept open between requests.
    }

    /** Sends a text file from the documents' page in two parts, as its script does. Whether the portal says that it has all of it. */
    boolean sendInParts(String name, String content) {
        Element form = page.selectFirst("form.sending");
        String describes = form.selectFirst("select option[selected]").val();
        int middle = content.length() / 2;
        HttpRequest.Builder begin = HttpRequest.newBuilder(URI.create(
                        form.absUrl("data-begin") + "?beginning=" + "00".repeat(32) + "&describes=" + describes))
                .method("POST", HttpRequest.BodyPublishers.ofString(content.substring(0, middle)))
                .header("Content-Disposition", "inline; filename=\"" + name + "\"")
                .header("Upload-Length", Integer.toString(content.length()))
                .header("Upload-Complete", "?0");
        String address = answer(begin, 201).firstValue("Location").orElseThrow();
        HttpRequest.Builder end = HttpRequest.newBuilder(URI.create(base + address))
                .method("PATCH", HttpRequest.BodyPublishers.ofString(content.substring(middle)))
                .header("Content-Type", "application/partial-upload")
                .header("Upload-Offset", Integer.toString(middle))
                .header("Upload-Complete", "?1");
        return answer(end, 201).firstValue("Upload-Complete").orElse("").equals("?1");
    }

    private HttpHeaders answer(HttpRequest.Builder request, int expected) {
        String cookies = session.cookieStore().getCookies().stream()
                .map(cookie -> cookie.getName() + "=" + cookie.getValue())
                .collect(Collectors.joining("; "));
        String token = page.selectFirst("form.sending input[name=_csrf]").val();
        try {
            HttpResponse<Void> answer = HttpClient.newHttpClient()
                    .send(
                            request.header("Cookie", cookies)
                                    .header("X-XSRF-TOKEN", token)
                                    .build(),
                            HttpResponse.BodyHandlers.discarding());
            assertThat(answer.statusCode()).isEqualTo(expected);
            return answer.headers();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    private Element field(String label) {
        Element named = page.select("main [aria-label]").stream()
                .filter(candidate -> candidate.attr("aria-label").equals(label))
                .findFirst()
                .orElse(null);
        return named == null ? labelled(label) : named;
    }

    private Element labelled(String label) {
        Element found = page.select("main label").stream()
                .filter(candidate -> candidate.text().equals(label))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no field '" + label + "' among "
                        + page.select("main label").eachText() + " on: " + text()));
        String id = found.attr("for");
        Element field = id.isEmpty() ? found.select("input, select, textarea").first() : page.getElementById(id);
        if (field == null) {
            throw new AssertionError("the label '" + label + "' belongs to no field");
        }
        return field;
    }

    private void request(Connection request) {
        try {
            Connection.Response response = request.execute();
            status = response.statusCode();
            page = response.parse();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
