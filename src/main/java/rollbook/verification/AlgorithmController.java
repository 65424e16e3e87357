package rollbook.verification;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.manifest.ChecksumAlgorithm;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.web.Notice;

/** Saying which algorithm made the digests of a document that can't tell. */
@Controller
@RequestMapping("/p/{production}/documents/{id}/algorithm")
class AlgorithmController {
    private final Documents documents;
    private final AlgorithmStatements statements;

    AlgorithmController(Documents documents, AlgorithmStatements statements) {
        this.documents = documents;
        this.statements = statements;
    }

    /** @param algorithm one of those that the page offers; missing takes back what was said */
    @PostMapping
    @AllowedFor({Role.WRANGLER, Role.POST})
    String say(
            Membership membership,
            @PathVariable UUID id,
            @RequestParam int digits,
            @RequestParam(required = false) @Nullable ChecksumAlgorithm algorithm,
            @RequestParam(required = false) @Nullable Long newestSeen,
            RedirectAttributes flash) {
        Document document = documents.get(membership.productionId(), id);
        statements.say(membership, document, digits, algorithm, newestSeen);
        flash.addFlashAttribute(
                "notice",
                algorithm == null
                        ? Notice.of("verification.algorithm.taken-back", digits)
                        : Notice.of("verification.algorithm.said", digits, algorithm.label()));
        return "redirect:" + membership.path("documents/" + id);
    }
}
