package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;
import org.jspecify.annotations.Nullable;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.production.Role;
import rollbook.testing.TestProduction;

/** Somebody who sends a file in parts to a production. */
record UploadScene(MockMvcTester mvc, TestProduction production, Role role) {
    static final String PART = "application/partial-upload";

    static byte[] bytes(String content) {
        return content.getBytes(StandardCharsets.UTF_8);
    }

    /** Announces a file and sends as much of it as its first part. */
    MvcTestResult begin(String name, byte[] file, int first, String describes) {
        byte[] beginning = Arrays.copyOf(file, Math.min(file.length, 64 << 10));
        return mvc.post()
                .uri(production.path("documents/uploads"))
                .queryParam("beginning", HexFormat.of().formatHex(sha256(beginning)))
                .queryParam("describes", describes)
                .header("Upload-Length", file.length)
                .header("Upload-Complete", first == file.length ? "?1" : "?0")
                .header("Content-Disposition", "inline; filename*=UTF-8''" + name)
                .content(Arrays.copyOf(file, first))
                .with(production.signedInAs(role))
                .exchange();
    }

    MvcTestResult begin(String name, byte[] file, int first) {
        return begin(name, file, first, "");
    }

    /** Where a file that was begun stands. */
    static String address(MvcTestResult answer) {
        String location = answer.getResponse().getHeader("Location");
        assertThat(location).as("%s", answer.getResponse().getStatus()).isNotNull();
        return location;
    }

    MvcTestResult part(String address, long offset, byte[] content, boolean last) {
        return part(address, offset, content, last, digest(content));
    }

    MvcTestResult part(String address, long offset, byte[] content, boolean last, @Nullable String digest) {
        MockMvcTester.MockMvcRequestBuilder request = mvc.patch()
                .uri(address)
                .contentType(PART)
                .header("Upload-Offset", offset)
                .header("Upload-Complete", last ? "?1" : "?0")
                .content(content);
        if (digest != null) {
            request.header("Content-Digest", digest);
        }
        return request.with(production.signedInAs(role)).exchange();
    }

    MvcTestResult look(String address) {
        return mvc.head().uri(address).with(production.signedInAs(role)).exchange();
    }

    MvcTestResult discard(String address) {
        return mvc.delete().uri(address).with(production.signedInAs(role)).exchange();
    }

    static long offset(MvcTestResult answer) {
        String offset = answer.getResponse().getHeader("Upload-Offset");
        assertThat(offset).as("%s", answer.getResponse().getStatus()).isNotNull();
        return Long.parseLong(offset);
    }

    static boolean complete(MvcTestResult answer) {
        MockHttpServletResponse response = answer.getResponse();
        return "?1".equals(response.getHeader("Upload-Complete"));
    }

    static String digest(byte[] content) {
        return "sha-256=:" + Base64.getEncoder().encodeToString(sha256(content)) + ":";
    }

    static byte[] sha256(byte[] content) {
        return DocumentContent.sha256().digest(content);
    }
}
