package rollbook.post;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Locale;
import java.util.UUID;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import rollbook.production.Membership;
import rollbook.web.FileAnswer;
import rollbook.web.PortalAddress;

/** The list of what lies on a medium, to print and put into its case. */
@Controller
class ContentsController {
    private final ContentsList contents;
    private final PortalAddress address;

    ContentsController(ContentsList contents, PortalAddress address) {
        this.contents = contents;
        this.address = address;
    }

    @GetMapping("/p/{production}/post/media/{item:[0-9a-fA-F-]{36}}/contents.pdf")
    ResponseEntity<byte[]> print(Membership membership, @PathVariable UUID item, HttpServletRequest request) {
        ContentsList.Printed printed = contents.of(membership, item, address.base(request));
        String name = "contents-" + printed.itemCode().toLowerCase(Locale.ROOT) + ".pdf";
        return FileAnswer.shown(name, MediaType.APPLICATION_PDF, printed.pdf());
    }
}
