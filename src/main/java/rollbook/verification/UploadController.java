package rollbook.verification;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.net.URI;
import java.util.List;
import java.util.OptionalLong;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PatchMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.web.Display;
import rollbook.web.NotFoundException;
import rollbook.web.Notice;

/** Takes files in parts: Resumable Uploads for HTTP, as docs/formats.md tells. */
@Controller
@RequestMapping("/p/{production}/documents/uploads")
class UploadController {
    private static final String PART = "application/partial-upload";
    private static final String PROBLEMS = "https://iana.org/assignments/http-problem-types#";

    private final Uploads uploads;
    private final UploadCompletion completion;
    private final Display display;

    UploadController(Uploads uploads, UploadCompletion completion, Display display) {
        this.uploads = uploads;
        this.completion = completion;
        this.display = display;
    }

    /**
     * Begins an upload with the content as its first part, or finds the one that was begun (200), and then passes the content over.
     *
     * @param beginning SHA-256 of the first 64 KiB of the file, by which it is found again
     * @param delivery an earlier delivery that the file belongs to
     */
    @PostMapping
    @AllowedFor({Role.WRANGLER, Role.POST})
    ResponseEntity<Object> begin(
            Membership membership,
            @RequestParam(defaultValue = "") String beginning,
            @RequestParam(defaultValue = "") String describes,
            @RequestParam(required = false) @Nullable UUID delivery,
            @RequestHeader(name = UploadFields.LENGTH, required = false) @Nullable String length,
            HttpServletRequest request,
            HttpServletResponse response)
            throws IOException {
        byte[] known = UploadFields.hexSha256(beginning);
        long size = UploadFields.number(length).orElse(0);
        Described said = Described.of(describes);
        if (known == null || size == 0) {
            throw new ResponseStatusException(HttpStatus.BAD_REQUEST);
        }
        if (!said.value().equals(describes)) {
            throw new NotFoundException();
        }
        if (size > uploads.mostBytes()) {
            return tooLarge();
        }
        String name = UploadFields.fileName(request.getHeader(HttpHeaders.CONTENT_DISPOSITION));
        try (ArrivedPart part = ArrivedPart.from(request.getInputStream(), Uploads.MOST_PART_BYTES)) {
            if (part == null) {
                return tooLarge();
            }
            Upload upload = uploads.begin(membership, new Uploads.Announced(name, size, known), said, delivery);
            said.remember(membership, request, response);
            if (upload.keptBytes() > 0) {
                return answer(request, membership, upload, HttpStatus.OK).body(null);
            }
            return append(membership, upload, 0, part, HttpStatus.CREATED, request);
        }
    }

    /** How far it is; asked with HEAD, without the list of parts. */
    @GetMapping("/{upload}")
    @AllowedFor({Role.WRANGLER, Role.POST})
    ResponseEntity<Object> look(Membership membership, @PathVariable UUID upload, HttpServletRequest request) {
        Upload found = uploads.get(membership, upload);
        return answer(request, membership, found, HttpStatus.OK).body(new Kept(uploads.parts(upload)));
    }

    record Kept(List<Upload.Part> parts) {}

    @PatchMapping("/{upload}")
    @AllowedFor({Role.WRANGLER, Role.POST})
    ResponseEntity<Object> append(
            Membership membership,
            @PathVariable UUID upload,
            @RequestHeader(name = UploadFields.OFFSET, required = false) @Nullable String offset,
            HttpServletRequest request)
            throws IOException {
        Upload found = uploads.get(membership, upload);
        OptionalLong start = UploadFields.number(offset);
        if (!PART.equals(request.getContentType())) {
            throw new ResponseStatusException(HttpStatus.UNSUPPORTED_MEDIA_TYPE);
        }
        if (start.isEmpty()) {
            throw new ResponseStatusException(HttpStatus.BAD_REQUEST);
        }
        try (ArrivedPart part = ArrivedPart.from(request.getInputStream(), Uploads.MOST_PART_BYTES)) {
            return part == null
                    ? tooLarge()
                    : append(membership, found, start.getAsLong(), part, HttpStatus.NO_CONTENT, request);
        }
    }

    private ResponseEntity<Object> append(
            Membership membership,
            Upload upload,
            long start,
            ArrivedPart part,
            HttpStatus kept,
            HttpServletRequest request)
            throws IOException {
        Boolean last = UploadFields.flag(request.getHeader(UploadFields.COMPLETE));
        if (last == null) {
            throw new ResponseStatusException(HttpStatus.BAD_REQUEST);
        }
        Upload.Outcome outcome = uploads.append(
                membership,
                upload.id(),
                start,
                part,
                UploadFields.sha256(request.getHeader(UploadFields.CONTENT_DIGEST)));
        if (outcome == Upload.Outcome.TOO_LONG) {
            return ResponseEntity.of(problem(outcome)).build();
        }
        boolean ended = outcome == Upload.Outcome.KEPT && last;
        if (ended) {
            outcome = completion.complete(membership, upload.id());
        }
        Upload now = uploads.get(membership, upload.id());
        return switch (outcome) {
            case KEPT -> answer(request, membership, now, kept).body(null);
            case COMPLETE ->
                ended
                        ? answer(request, membership, now, HttpStatus.CREATED).body(null)
                        : answer(request, membership, now, HttpStatus.CONFLICT).body(problem(outcome));
            default -> answer(request, membership, now, HttpStatus.CONFLICT).body(problem(outcome));
        };
    }

    /** Where it stands: of a complete one, where it is told what became of it. */
    private static ResponseEntity.BodyBuilder answer(
            HttpServletRequest request, Membership by, Upload upload, HttpStatus status) {
        return ResponseEntity.status(status)
                .location(URI.create(request.getContextPath()
                        + by.path(
                                upload.complete()
                                        ? "documents/deliveries/" + upload.deliveryId()
                                        : "documents/uploads/" + upload.id())))
                .header(UploadFields.OFFSET, Long.toString(upload.keptBytes()))
                .header(UploadFields.LENGTH, Long.toString(upload.sizeBytes()))
                .header(UploadFields.COMPLETE, UploadFields.flag(upload.complete()))
                .header(UploadFields.LIMIT, "max-append-size=" + Uploads.MOST_PART_BYTES);
    }

    private ResponseEntity<Object> tooLarge() {
        return ResponseEntity.status(HttpStatus.CONTENT_TOO_LARGE)
                .header(
                        UploadFields.LIMIT,
                        "max-size=%d, max-append-size=%d".formatted(uploads.mostBytes(), Uploads.MOST_PART_BYTES))
                .build();
    }

    private ProblemDetail problem(Upload.Outcome outcome) {
        ProblemDetail problem = ProblemDetail.forStatus(HttpStatus.CONFLICT);
        String type = switch (outcome) {
            case ELSEWHERE -> "mismatching-upload-offset";
            case COMPLETE -> "completed-upload";
            case TOO_LONG -> "inconsistent-upload-length";
            default -> null;
        };
        if (type != null) {
            problem.setType(URI.create(PROBLEMS + type));
        }
        problem.setTitle(display.text("verification.uploads.problem." + outcome));
        return problem;
    }

    @DeleteMapping("/{upload}")
    @AllowedFor({Role.WRANGLER, Role.POST})
    ResponseEntity<Void> discard(Membership membership, @PathVariable UUID upload) {
        uploads.discard(membership, upload);
        return ResponseEntity.noContent().build();
    }

    @PostMapping("/{upload}/discard")
    @AllowedFor({Role.WRANGLER, Role.POST})
    String discard(Membership membership, @PathVariable UUID upload, RedirectAttributes flash) {
        Upload gone = uploads.get(membership, upload);
        uploads.discard(membership, upload);
        flash.addFlashAttribute("notice", Notice.of("verification.uploads.discarded", gone.shownName()));
        return "redirect:" + membership.path("documents");
    }
}
