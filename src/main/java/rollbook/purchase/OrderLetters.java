package rollbook.purchase;

import jakarta.activation.DataHandler;
import jakarta.mail.Message;
import jakarta.mail.MessagingException;
import jakarta.mail.Session;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeBodyPart;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import jakarta.mail.util.ByteArrayDataSource;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Properties;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.web.util.UriUtils;
import rollbook.production.Membership;
import rollbook.web.Display;

/** The letter to a supplier that goes with an order: people look at it and send it themselves. */
@Component
class OrderLetters {
    /** Mail programs show a message with this header as one that isn't sent yet. Common practice, no standard. */
    private static final String UNSENT = "X-Unsent";

    private final Display display;

    OrderLetters(Display display) {
        this.display = display;
    }

    String subject(Membership membership, OrderPaper paper) {
        return display.text("purchase.letter.subject", paper.reference(), membership.productionName());
    }

    String text(Membership membership, OrderPaper paper) {
        List<String> lines = new ArrayList<>();
        lines.add(subject(membership, paper));
        lines.add(paper.state());
        lines.add("");
        paper.rows()
                .forEach(row -> lines.add(
                        display.text("purchase.letter.line", row.items(), row.what(), row.how(), row.unit())));
        lines.add("");
        paper.sums().forEach(fact -> lines.add(display.text("purchase.letter.fact", fact.name(), fact.text())));
        paper.facts().forEach(fact -> lines.add(display.text("purchase.letter.fact", fact.name(), fact.text())));
        if (!paper.note().isEmpty()) {
            lines.add("");
            lines.add(paper.note());
        }
        lines.add("");
        lines.add(display.text("purchase.letter.signature", membership.personName(), membership.productionName()));
        return String.join("\r\n", lines);
    }

    /** Opens a letter in the mail program, without the PDF; null if nobody is known to write to. */
    @Nullable
    String address(Membership membership, OrderPaper paper) {
        return paper.email() == null
                ? null
                : "mailto:%s?subject=%s&body=%s"
                        .formatted(
                                encoded(paper.email()),
                                encoded(subject(membership, paper)),
                                encoded(text(membership, paper)));
    }

    private static String encoded(String text) {
        return UriUtils.encode(text, StandardCharsets.UTF_8).replace("%40", "@");
    }

    /** A letter with the PDF, as a file. Who sends it and when is said by the mail program. */
    byte[] draft(Membership membership, OrderPaper paper, byte[] pdf, String pdfName)
            throws MessagingException, IOException {
        MimeBodyPart text = new MimeBodyPart();
        text.setText(text(membership, paper), StandardCharsets.UTF_8.name());
        MimeBodyPart attachment = new MimeBodyPart();
        attachment.setDataHandler(new DataHandler(new ByteArrayDataSource(pdf, "application/pdf")));
        attachment.setFileName(pdfName);
        MimeMessage letter = new Unsent();
        letter.setHeader(UNSENT, "1");
        if (paper.email() != null) {
            letter.setRecipient(Message.RecipientType.TO, new InternetAddress(paper.email()));
        }
        letter.setSubject(subject(membership, paper), StandardCharsets.UTF_8.name());
        letter.setContent(new MimeMultipart(text, attachment));
        letter.saveChanges();
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        letter.writeTo(file);
        return file.toByteArray();
    }

    /** Without a Message-ID, which would tell of this machine; the sender's program gives one. */
    private static final class Unsent extends MimeMessage {
        Unsent() {
            super(Session.getInstance(new Properties()));
        }

        @Override
        protected void updateMessageID() throws MessagingException {
            removeHeader("Message-ID");
        }
    }
}
