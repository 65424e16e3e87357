package rollbook.verification;

import java.util.Base64;
import java.util.HexFormat;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ContentDisposition;

/** Fields in the heads of requests and answers, as Resumable Uploads for HTTP and Digest Fields (RFC 9530) write them. */
final class UploadFields {
    static final String OFFSET = "Upload-Offset";
    static final String LENGTH = "Upload-Length";
    static final String COMPLETE = "Upload-Complete";
    static final String LIMIT = "Upload-Limit";
    static final String CONTENT_DIGEST = "Content-Digest";

    private static final Pattern INTEGER = Pattern.compile(" *(\\d{1,15}) *");
    private static final Pattern SHA_256 = Pattern.compile("(?:^|,) *sha-256=:([A-Za-z0-9+/=]*):");
    private static final int SHA_256_BYTES = 32;

    private UploadFields() {}

    /** Nothing if it is no whole number from 0 on. */
    static OptionalLong number(@Nullable String field) {
        Matcher integer = INTEGER.matcher(field == null ? "" : field);
        return integer.matches() ? OptionalLong.of(Long.parseLong(integer.group(1))) : OptionalLong.empty();
    }

    /** Null if it is neither true nor false. */
    static @Nullable Boolean flag(@Nullable String field) {
        return field == null
                ? null
                : switch (field.strip()) {
                    case "?1" -> Boolean.TRUE;
                    case "?0" -> Boolean.FALSE;
                    default -> null;
                };
    }

    static String flag(boolean value) {
        return value ? "?1" : "?0";
    }

    /** The SHA-256 among the digests; null if there is none. One that can't be read is as good as a wrong one. */
    static byte @Nullable [] sha256(@Nullable String field) {
        Matcher digest = SHA_256.matcher(field == null ? "" : field);
        if (!digest.find()) {
            return null;
        }
        try {
            return Base64.getDecoder().decode(digest.group(1));
        } catch (IllegalArgumentException unreadable) {
            return new byte[0];
        }
    }

    /** A SHA-256 in hexadecimal digits; null if it is none. */
    static byte @Nullable [] hexSha256(String digits) {
        try {
            byte[] digest = HexFormat.of().parseHex(digits);
            return digest.length == SHA_256_BYTES ? digest : null;
        } catch (IllegalArgumentException unreadable) {
            return null;
        }
    }

    /** The name of the file that the request's content is; empty if it has none. */
    static String fileName(@Nullable String disposition) {
        if (disposition == null) {
            return "";
        }
        try {
            String name = ContentDisposition.parse(disposition).getFilename();
            return name == null ? "" : name;
        } catch (IllegalArgumentException unreadable) {
            return "";
        }
    }
}
