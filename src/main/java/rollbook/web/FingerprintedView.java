package rollbook.web;

import jakarta.servlet.http.Cookie;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpServletResponseWrapper;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Map;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.web.util.WebUtils;
import org.thymeleaf.spring6.view.ThymeleafView;

/**
 * Writes into a page what it is known by, and answers 304 to an open page that asks for itself and is the same still.
 * Two pages are the same if they differ in nothing but when they were made, what the browser counts on by itself (how
 * long ago) and the masks of the tokens in their forms.
 */
class FingerprintedView extends ThymeleafView {
    /** Stands in the layout where the fingerprint is to stand. */
    static final String PLACE = "data-fingerprint=\"?\"";

    /** Where Spring Security keeps the token that those in the forms are masks of. */
    static final String TOKEN_COOKIE = "XSRF-TOKEN";

    private static final int TAG_BYTES = 16;

    private static final Pattern DIFFERS = Pattern.compile("name=\"_csrf\" value=\"[^\"]*\""
            + "|<span data-ago[^>]*>[^<]*</span>"
            + "|<time data-made-at[^>]*>[^<]*</time>"
            + "|<p class=\"printed\">[^<]*</p>");

    @Override
    public void render(@Nullable Map<String, ?> model, HttpServletRequest request, HttpServletResponse response)
            throws Exception {
        Kept kept = new Kept(response);
        super.render(model, request, kept);
        String page = kept.text.toString();
        if (page.contains(PLACE)) {
            String tag = tag(page, request);
            response.setHeader(HttpHeaders.ETAG, tag);
            if (request.getHeader(Refresh.HEADER) != null && tag.equals(request.getHeader(HttpHeaders.IF_NONE_MATCH))) {
                response.setStatus(HttpStatus.NOT_MODIFIED.value());
                return;
            }
            page = page.replace(PLACE, "data-fingerprint=\"" + tag.replace("\"", "&quot;") + "\"");
        }
        response.getWriter().write(page);
    }

    /** Weak, for pages are compressed. A new token is a new page: forms with the old one would be refused. */
    private static String tag(String page, HttpServletRequest request) throws NoSuchAlgorithmException {
        Cookie token = WebUtils.getCookie(request, TOKEN_COOKIE);
        String same = DIFFERS.matcher(page).replaceAll("") + (token == null ? "" : token.getValue());
        byte[] digest = MessageDigest.getInstance("SHA-256").digest(same.getBytes(StandardCharsets.UTF_8));
        return "W/\"" + HexFormat.of().formatHex(digest, 0, TAG_BYTES) + "\"";
    }

    private static final class Kept extends HttpServletResponseWrapper {
        private final StringWriter text = new StringWriter();
        private final PrintWriter writer = new PrintWriter(text);

        Kept(HttpServletResponse response) {
            super(response);
        }

        @Override
        public PrintWriter getWriter() {
            return writer;
        }

        @Override
        public void flushBuffer() {
            writer.flush();
        }
    }
}
