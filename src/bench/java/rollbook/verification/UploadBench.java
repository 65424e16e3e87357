package rollbook.verification;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import org.jsoup.Connection;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.multipart.MultipartFile;
import rollbook.bench.Figures;

/**
 * Sends a document as a browser does, through the loopback interface, and in turn the same bytes to a handler of the
 * same server that keeps them in a file and does nothing else. The bytes are sent as fast as the server takes them;
 * then the answer is waited for, with which the document is stored for good and read.
 */
final class UploadBench {
    private static final int WARM_UP_ROUNDS = 2;
    private static final double LEAST_SHARE_OF_PLAIN = 0.8;
    private static final String BOUNDARY = "----------------------------bench";
    private static final String PASSWORD = "a password of nobody";

    private final Portal portal;
    private final Portal.Show show;
    private final Map<String, String> cookies = new HashMap<>();
    private final String csrf;
    private final Path document;

    private UploadBench(Portal portal, Path document) throws IOException {
        this.portal = portal;
        this.document = document;
        this.show = portal.show();
        this.csrf = signIn();
    }

    /** Keeps what is sent in a file. */
    @RestController
    static class PlainUpload {
        private final Path folder;

        PlainUpload() throws IOException {
            folder = Files.createTempDirectory("plain-upload");
        }

        @PostMapping("/bench/plain")
        String take(@RequestParam MultipartFile file) {
            Path kept = folder.resolve("kept");
            try {
                file.transferTo(kept);
                long size = Files.size(kept);
                Files.delete(kept);
                return "kept " + size;
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    /** Folder, format, rounds, document. */
    public static void main(String[] arguments) throws IOException {
        Path document = Path.of(arguments[3]);
        try (Portal portal = Portal.start(Path.of(arguments[0]), PlainUpload.class)) {
            new UploadBench(portal, document).measure(arguments[1] + " upload: ", Integer.parseInt(arguments[2]));
        }
    }

    private record Sent(double seconds, double answeredSeconds) {}

    private void measure(String label, int rounds) throws IOException {
        double megabytes = Files.size(document) / 1e6;
        double[] plain = new double[rounds];
        double[] ours = new double[rounds];
        double[] share = new double[rounds];
        double[] plainAnswered = new double[rounds];
        double[] answered = new double[rounds];
        for (int round = -WARM_UP_ROUNDS; round < rounds; round++) {
            int at = Math.max(0, round);
            String padding = "\n".repeat(round + WARM_UP_ROUNDS + 1); // another document each time
            Sent toPlain = send("/bench/plain", padding);
            Sent toPortal = send(show.production().path("documents"), padding);
            plain[at] = megabytes / toPlain.seconds();
            ours[at] = megabytes / toPortal.seconds();
            share[at] = ours[at] / plain[at];
            plainAnswered[at] = megabytes / toPlain.answeredSeconds();
            answered[at] = megabytes / toPortal.answeredSeconds();
        }
        int kept = portal.jdbc()
                .sql("select count(*) from verification_reading where production_id = ? and state = 'READ'")
                .param(show.wrangler().productionId())
                .query(Integer.class)
                .single();
        if (kept != rounds + WARM_UP_ROUNDS) {
            throw new IllegalStateException(kept + " documents were stored and read");
        }
        Figures.print(label + "rate until the last byte is sent", Figures.median(ours), "MB/s");
        Figures.atLeast(
                label + "share of a plain upload’s rate",
                Figures.median(share),
                "",
                LEAST_SHARE_OF_PLAIN,
                "plain " + Figures.text(Figures.median(plain)) + " MB/s");
        Figures.print(label + "rate until the answer, stored and read", Figures.median(answered), "MB/s");
        Figures.print(label + "rate of the plain upload until the answer", Figures.median(plainAnswered), "MB/s");
    }

    /** Takes the session's cookies, and hands out the token that forms carry. */
    private String signIn() throws IOException {
        String hash = portal.get(PasswordEncoder.class).encode(PASSWORD);
        String name = portal.jdbc()
                .sql("update people_person set password_hash = ? where id = ? returning sign_in_name")
                .params(hash, show.wrangler().personId())
                .query(String.class)
                .single();
        Connection session = Jsoup.newSession().followRedirects(true).timeout(60_000);
        String base = "http://127.0.0.1:" + portal.port();
        String token = session.newRequest(base + "/sign-in").get().select("input[name=_csrf]").val();
        session.newRequest(base + "/sign-in")
                .data("_csrf", token)
                .data("username", name)
                .data("password", PASSWORD)
                .post();
        Document page = session.newRequest(base + show.production().path("documents")).get();
        session.cookieStore().getCookies().forEach(cookie -> cookies.put(cookie.getName(), cookie.getValue()));
        return page.select("input[name=_csrf]").first().val();
    }

    private Sent send(String address, String padding) throws IOException {
        String start = "--" + BOUNDARY + "\r\nContent-Disposition: form-data; name=\"file\"; filename=\""
                + document.getFileName() + "\"\r\nContent-Type: application/octet-stream\r\n\r\n";
        String end = padding + "\r\n--" + BOUNDARY + "--\r\n";
        long length = start.length() + Files.size(document) + end.length();
        StringBuilder cookie = new StringBuilder();
        cookies.forEach((name, value) ->
                cookie.append(cookie.isEmpty() ? "" : "; ").append(name).append('=').append(value));
        String head = "POST " + address + " HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\nCookie: " + cookie
                + "\r\nX-XSRF-TOKEN: " + csrf + "\r\nContent-Type: multipart/form-data; boundary=" + BOUNDARY
                + "\r\nContent-Length: " + length + "\r\n\r\n";
        try (Socket socket = new Socket("127.0.0.1", portal.port());
                InputStream file = Files.newInputStream(document);
                InputStream in = new BufferedInputStream(socket.getInputStream())) {
            OutputStream out = socket.getOutputStream();
            long began = System.nanoTime();
            out.write((head + start).getBytes(StandardCharsets.US_ASCII));
            byte[] buffer = new byte[1 << 16];
            for (int count = file.read(buffer); count > 0; count = file.read(buffer)) {
                out.write(buffer, 0, count);
            }
            out.write(end.getBytes(StandardCharsets.US_ASCII));
            out.flush();
            double sent = Figures.seconds(began);
            String answer = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            double answered = Figures.seconds(began);
            if (!answer.startsWith("HTTP/1.1 2") && !answer.startsWith("HTTP/1.1 302")) {
                throw new IOException("The server answered " + answer.lines().findFirst().orElse("nothing"));
            }
            return new Sent(sent, answered);
        }
    }
}
