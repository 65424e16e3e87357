package rollbook.mail;

import jakarta.mail.Message;
import jakarta.mail.MessagingException;
import jakarta.mail.internet.InternetHeaders;
import jakarta.mail.internet.MimeMessage;
import java.io.IOException;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.eclipse.angus.mail.dsn.DeliveryStatus;
import org.eclipse.angus.mail.dsn.MultipartReport;

/**
 * What a delivery report (RFC 3464) says of a message that could not be delivered.
 *
 * @param messageId of the original, as it was sent
 * @param why the mail systems' own words
 */
record BounceReport(String messageId, String why) {
    private static final int LONGEST = 500;

    /** Empty if it is no report, tells of no failure for good, or doesn't say of which message. */
    static Optional<BounceReport> of(Message message) throws MessagingException, IOException {
        if (!message.isMimeType("multipart/report")
                || !(message.getContent() instanceof MultipartReport report)
                || !(report.getReport() instanceof DeliveryStatus status)) {
            return Optional.empty();
        }
        MimeMessage original = report.getReturnedMessage();
        String[] ids = original == null ? null : original.getHeader("Message-ID");
        if (ids == null || ids.length != 1) {
            return Optional.empty();
        }
        return IntStream.range(0, status.getRecipientDSNCount())
                .mapToObj(status::getRecipientDSN)
                .filter(recipient -> "failed".equalsIgnoreCase(field(recipient, "Action")))
                .findFirst()
                .map(recipient -> new BounceReport(ids[0].strip(), why(recipient)));
    }

    private static String why(InternetHeaders recipient) {
        String words = String.join(
                        " ",
                        Stream.of("Status", "Diagnostic-Code")
                                .map(name -> field(recipient, name))
                                .filter(value -> !value.isEmpty())
                                .toList())
                .replaceAll("\\s+", " ");
        return words.length() > LONGEST ? words.substring(0, LONGEST) : words;
    }

    private static String field(InternetHeaders headers, String name) {
        String value = headers.getHeader(name, null);
        return value == null ? "" : value.strip();
    }
}
