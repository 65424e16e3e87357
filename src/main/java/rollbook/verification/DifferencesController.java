package rollbook.verification;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import java.util.UUID;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import rollbook.manifest.ChecksumAlgorithm;
import rollbook.production.Membership;
import rollbook.web.NotFoundException;

/** What a verdict found, and the files to copy again as lists. */
@Controller
@RequestMapping("/p/{production}/rolls/{roll}/verdicts/{verdict}")
class DifferencesController {
    private final Differences differences;

    DifferencesController(Differences differences) {
        this.differences = differences;
    }

    @GetMapping
    String differences(Membership membership, @PathVariable UUID roll, @PathVariable long verdict, Model model) {
        model.addAttribute("view", differences.view(membership, roll, verdict));
        return "verification/differences";
    }

    /** One path a line. */
    @GetMapping("/again/paths")
    ResponseEntity<byte[]> paths(Membership membership, @PathVariable UUID roll, @PathVariable long verdict) {
        Differences.AgainList again = differences.again(membership, roll, verdict);
        return download(again, "txt", again.files().paths('\n'));
    }

    /** For names with line breaks in them: each path ended by a NUL. */
    @GetMapping("/again/paths0")
    ResponseEntity<byte[]> pathsEndedByNul(Membership membership, @PathVariable UUID roll, @PathVariable long verdict) {
        Differences.AgainList again = differences.again(membership, roll, verdict);
        return download(again, "nul", again.files().paths('\0'));
    }

    @GetMapping("/again/checksums/{algorithm}")
    ResponseEntity<byte[]> checksums(
            Membership membership,
            @PathVariable UUID roll,
            @PathVariable long verdict,
            @PathVariable String algorithm) {
        Differences.AgainList again = differences.again(membership, roll, verdict);
        ChecksumAlgorithm wanted = Arrays.stream(ChecksumAlgorithm.values())
                .filter(known -> known.name().equals(algorithm))
                .filter(known -> again.files().algorithms().containsKey(known))
                .findFirst()
                .orElseThrow(NotFoundException::new);
        return download(
                again, wanted.name().toLowerCase(Locale.ROOT), again.files().checksums(wanted));
    }

    private static ResponseEntity<byte[]> download(Differences.AgainList again, String ending, byte[] content) {
        String name = "%s-%s-again%s.%s"
                .formatted(
                        again.roll().code(),
                        again.copy().itemCode(),
                        again.cut() ? "-first-" + again.files().files() : "",
                        ending);
        return ResponseEntity.ok()
                .contentType(MediaType.APPLICATION_OCTET_STREAM)
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        ContentDisposition.attachment()
                                .filename(name.replaceAll("[^A-Za-z0-9._-]", "-"), StandardCharsets.UTF_8)
                                .build()
                                .toString())
                .body(content);
    }
}
