package rollbook.purchase;

import jakarta.mail.MessagingException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.springframework.core.io.ClassPathResource;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import rollbook.label.PdfPress;
import rollbook.production.Membership;
import rollbook.web.FileAnswer;

/** An order as a PDF, and as the draft of a letter that carries it. */
@Controller
@RequestMapping("/p/{production}/orders/{id:[0-9a-fA-F-]{36}}")
class OrderPaperController {
    private final Orders orders;
    private final OrderPapers papers;
    private final OrderLetters letters;
    private final PdfPress press;
    private final String style;

    OrderPaperController(Orders orders, OrderPapers papers, OrderLetters letters, PdfPress press) {
        this.orders = orders;
        this.papers = papers;
        this.letters = letters;
        this.press = press;
        try {
            style = new ClassPathResource("templates/purchase/paper.css").getContentAsString(StandardCharsets.UTF_8);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    @GetMapping("/order.pdf")
    ResponseEntity<byte[]> pdf(Membership membership, @PathVariable UUID id) {
        OrderPaper paper = papers.of(membership, orders.get(membership.productionId(), id));
        return FileAnswer.shown(name(paper, "pdf"), MediaType.APPLICATION_PDF, print(paper));
    }

    /** Opens in a mail program as a letter that isn't sent yet. */
    @GetMapping("/order.eml")
    ResponseEntity<byte[]> letter(Membership membership, @PathVariable UUID id) throws MessagingException, IOException {
        OrderPaper paper = papers.of(membership, orders.get(membership.productionId(), id));
        return FileAnswer.kept(
                name(paper, "eml"),
                new MediaType("message", "rfc822"),
                letters.draft(membership, paper, print(paper), name(paper, "pdf")));
    }

    private byte[] print(OrderPaper paper) {
        return press.print("purchase/paper", Map.of("paper", paper), style);
    }

    private static String name(OrderPaper paper, String ending) {
        return "order-" + paper.reference().toLowerCase(Locale.ROOT) + "." + ending;
    }
}
