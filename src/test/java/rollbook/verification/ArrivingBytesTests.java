package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import rollbook.manifest.DocumentHints;
import rollbook.manifest.ManifestException;
import rollbook.manifest.ManifestProblem;
import rollbook.manifest.ReadManifest;

class ArrivingBytesTests {

    @Test
    void theReaderGetsEveryByteInItsOrder() throws Exception {
        StringBuilder sent = new StringBuilder();
        try (ArrivingBytes<String> bytes = new ArrivingBytes<>(ArrivingBytesTests::text)) {
            for (int i = 0; i < 1_000; i++) {
                String chunk = "x".repeat(i % 7) + i;
                sent.append(chunk);
                bytes.accept(chunk.getBytes(StandardCharsets.UTF_8));
            }

            assertThat(bytes.finish()).contains(sent.toString());
        }
    }

    @Test
    void aDocumentThatIsRefusedEarlyStopsNobody() throws Exception {
        try (ArrivingBytes<ReadManifest> bytes = new ArrivingBytes<>(in -> ReadManifest.read(
                in,
                DocumentHints.named("a.md5"),
                new ReadManifest.Known(List.of(), null, null),
                Long.MAX_VALUE,
                entry -> {}))) {
            for (int i = 0; i < 100; i++) {
                bytes.accept("not a list\n".getBytes(StandardCharsets.UTF_8));
            }

            assertThatExceptionOfType(ManifestException.class)
                    .isThrownBy(bytes::finish)
                    .extracting(ManifestException::problem)
                    .isEqualTo(ManifestProblem.NOT_A_LIST_LINE);
        }
    }

    @Test
    void aFaultOfTheReaderLosesNothingButTheReading() throws Exception {
        try (ArrivingBytes<String> bytes = new ArrivingBytes<>(in -> {
            throw new IllegalStateException("a fault made for this test");
        })) {
            for (int i = 0; i < 100; i++) {
                bytes.accept(new byte[10]);
            }

            assertThat(bytes.finish()).isEmpty();
        }
    }

    @Test
    void anUploadThatBreaksOffEndsTheReader() throws Exception {
        CountDownLatch begun = new CountDownLatch(1);
        CountDownLatch ended = new CountDownLatch(1);
        try (ArrivingBytes<String> bytes = new ArrivingBytes<>(in -> {
            begun.countDown();
            try {
                return text(in);
            } finally {
                ended.countDown();
            }
        })) {
            bytes.accept(new byte[10]);
            assertThat(begun.await(60, TimeUnit.SECONDS)).isTrue();
        }

        assertThat(ended.await(60, TimeUnit.SECONDS)).isTrue();
    }

    private static String text(InputStream in) throws IOException {
        return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
}
