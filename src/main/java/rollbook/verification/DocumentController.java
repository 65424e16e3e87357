package rollbook.verification;

import jakarta.servlet.http.HttpServletResponse;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.core.io.InputStreamResource;
import org.springframework.core.io.Resource;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.web.NotFoundException;
import rollbook.web.Notice;

/** A document: what it is, what it says, and what its parts describe. */
@Controller
@RequestMapping("/p/{production}/documents/{id}")
class DocumentController {
    private final DocumentPages pages;
    private final Documents documents;
    private final DocumentDetails details;
    private final Confirmations confirmations;
    private final DocumentSentences sentences;

    DocumentController(
            DocumentPages pages,
            Documents documents,
            DocumentDetails details,
            Confirmations confirmations,
            DocumentSentences sentences) {
        this.pages = pages;
        this.documents = documents;
        this.details = details;
        this.confirmations = confirmations;
        this.sentences = sentences;
    }

    /** @param part the assigned part whose forms are to be shown: they would fill the page if all were */
    @GetMapping
    String show(
            Membership membership,
            @PathVariable UUID id,
            @RequestParam(required = false) @Nullable UUID part,
            Model model) {
        return show(membership, pages.get(membership.productionId(), id), part, model);
    }

    private String show(Membership membership, DocumentPage page, @Nullable UUID part, Model model) {
        model.addAttribute("view", page);
        model.addAttribute("document", page.document());
        model.addAttribute("open", part);
        model.addAttribute("maySay", DocumentsController.maySay(membership));
        model.addAttribute(
                "sentence",
                page.archive() == null ? sentences.document(page.document()) : sentences.archive(page.archive()));
        model.addAttribute("words", sentences);
        return "verification/document";
    }

    /** The bytes as they were sent, as a download that no browser will try to show. */
    @GetMapping("/content")
    ResponseEntity<Resource> content(Membership membership, @PathVariable UUID id) {
        Document document = documents.get(membership.productionId(), id);
        return ResponseEntity.ok()
                .contentType(MediaType.APPLICATION_OCTET_STREAM)
                .contentLength(document.sizeBytes())
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        ContentDisposition.attachment()
                                .filename(document.fileName(), StandardCharsets.UTF_8)
                                .build()
                                .toString())
                .body(new InputStreamResource(() -> documents.open(membership.productionId(), id)));
    }

    @PostMapping("/read-again")
    @AllowedFor({Role.WRANGLER, Role.POST})
    String readAgain(Membership membership, @PathVariable UUID id) {
        details.readAgain(membership, id);
        return "redirect:" + membership.path("documents/" + id);
    }

    @PostMapping("/parts/{part}")
    @AllowedFor({Role.WRANGLER, Role.POST})
    String assign(
            Membership membership,
            @PathVariable UUID id,
            @PathVariable UUID part,
            @RequestParam(defaultValue = "") String subject,
            @RequestParam(defaultValue = "") String roll,
            @RequestParam(defaultValue = "") String medium,
            @RequestParam(defaultValue = "") String note,
            @RequestParam(required = false) @Nullable Long replaces,
            @RequestParam(required = false) @Nullable Long newestSeen,
            Model model,
            HttpServletResponse response,
            RedirectAttributes flash) {
        DocumentPage page = pages.get(membership.productionId(), id);
        PartView said = page.parts().stream()
                .filter(one -> one.id().equals(part))
                .findFirst()
                .orElseThrow(NotFoundException::new);
        PartForm form = confirmations.assign(
                membership,
                new PartForm(part, subject, roll, medium, note, replaces, newestSeen, Map.of()),
                page.rollIds());
        if (form.isWrong()) {
            model.addAttribute("wrong", form);
            return invalid(membership, page, part, model, response);
        }
        flash.addFlashAttribute("notice", Notice.of("verification.document.assigned", said.folder()));
        return "redirect:" + membership.path("documents/" + id);
    }

    /** @param part those that the person saw; each is assigned to its own roll */
    @PostMapping("/confirm")
    @AllowedFor({Role.WRANGLER, Role.POST})
    String confirm(
            Membership membership,
            @PathVariable UUID id,
            @RequestParam(defaultValue = "") String describes,
            @RequestParam List<UUID> part,
            Model model,
            HttpServletResponse response,
            RedirectAttributes flash) {
        DocumentPage page = pages.get(membership.productionId(), id);
        List<PartView> said = page.parts().stream()
                .filter(one -> part.contains(one.id()) && one.roll() != null)
                .toList();
        if (said.isEmpty() || said.size() != new HashSet<>(part).size()) {
            throw new NotFoundException();
        }
        Described described = Described.of(describes);
        if (described.subject() == null) {
            model.addAttribute("unsaid", true);
            return invalid(membership, page, null, model, response);
        }
        confirmations.confirm(membership, said, page.rollIds(), described);
        flash.addFlashAttribute("notice", Notice.of("verification.document.confirmed", said.size()));
        return "redirect:" + membership.path("documents/" + id);
    }

    private String invalid(
            Membership membership, DocumentPage page, @Nullable UUID part, Model model, HttpServletResponse response) {
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        model.addAttribute("invalid", true);
        return show(membership, page, part, model);
    }
}
