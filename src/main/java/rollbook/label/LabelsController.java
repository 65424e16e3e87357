package rollbook.label;

import static org.springframework.http.HttpStatus.UNPROCESSABLE_CONTENT;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseCookie;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.CookieValue;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.util.UriComponentsBuilder;
import rollbook.inventory.MediaFilter;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaList;
import rollbook.production.Membership;
import rollbook.web.Display;
import rollbook.web.NotFoundException;
import rollbook.web.PortalAddress;
import rollbook.web.Refusal;

/** Asks which labels to print, shows the first sheet of them, and writes them all as a PDF. Nothing is changed by it. */
@Controller
class LabelsController {
    /** The sheet that the reader printed on last, so that it needn't be chosen again. */
    private static final String REMEMBERED_SHEET = "rollbook-sheet";

    private static final Duration REMEMBERED_FOR = Duration.ofDays(365);

    private final LabelReading reading;
    private final PortalAddress address;
    private final LabelPdf pdf;
    private final MediaList list;
    private final Display display;

    LabelsController(LabelReading reading, PortalAddress address, LabelPdf pdf, MediaList list, Display display) {
        this.reading = reading;
        this.address = address;
        this.pdf = pdf;
        this.list = list;
        this.display = display;
    }

    @ModelAttribute("labelForm")
    LabelForm asked(
            @RequestParam(defaultValue = "") String items,
            @RequestParam(required = false) @Nullable String sheet,
            @RequestParam(defaultValue = "1") String first,
            @RequestParam(defaultValue = "1") String copies,
            @CookieValue(name = REMEMBERED_SHEET, defaultValue = "A4_24") String remembered) {
        return new LabelForm(items.strip(), sheet == null ? remembered : sheet, first.strip(), copies.strip());
    }

    @GetMapping("/p/{production}/media/labels")
    String labels(
            Membership membership,
            @ModelAttribute LabelForm form,
            BindingResult result,
            @RequestParam(required = false) @Nullable String items,
            Model model,
            HttpServletRequest request,
            HttpServletResponse response) {
        if (items == null) {
            return page(model, request, Optional.empty());
        }
        Optional<LabelRun> run = reading.read(membership, address.base(request), form, result);
        if (run.isPresent()) {
            model.addAttribute("pdfHref", href(membership, form));
            remember(run.get().sheet(), request, response);
        } else {
            response.setStatus(UNPROCESSABLE_CONTENT.value());
        }
        return page(model, request, run);
    }

    /** The labels of a filtered list of media. */
    @GetMapping("/p/{production}/media/labels/of-list")
    String ofList(
            Membership membership,
            @RequestParam(required = false) @Nullable String kind,
            @RequestParam(required = false) @Nullable String state,
            @RequestParam(required = false) @Nullable String q) {
        List<String> codes = list.items(membership.productionId(), MediaFilter.of(kind, state, q)).stream()
                .map(MediaItem::code)
                .toList();
        String written = CodeList.write(codes);
        if (codes.size() > LabelReading.MOST_LABELS || written.length() > LabelReading.LONGEST_LIST) {
            throw new Refusal("label.refused.list-too-long", codes.size());
        }
        return "redirect:"
                + UriComponentsBuilder.fromPath(membership.path("media/labels"))
                        .queryParam("items", "{items}")
                        .encode()
                        .buildAndExpand(written)
                        .toUriString();
    }

    @GetMapping("/p/{production}/media/labels.pdf")
    @Nullable
    String print(
            Membership membership,
            @ModelAttribute LabelForm form,
            BindingResult result,
            Model model,
            HttpServletRequest request,
            HttpServletResponse response)
            throws IOException {
        Optional<LabelRun> run = reading.read(membership, address.base(request), form, result);
        if (run.isEmpty()) {
            response.setStatus(UNPROCESSABLE_CONTENT.value());
            return page(model, request, run);
        }
        response.setContentType(MediaType.APPLICATION_PDF_VALUE);
        String name = "labels-" + membership.code().toLowerCase(Locale.ROOT) + ".pdf";
        response.setHeader(
                HttpHeaders.CONTENT_DISPOSITION,
                ContentDisposition.inline().filename(name).build().toString());
        response.getOutputStream().write(pdf.of(run.get()));
        return null;
    }

    /** How a sheet looks on a screen. */
    @GetMapping("/labels/{sheet}.css")
    ResponseEntity<String> style(@PathVariable String sheet) {
        SheetKind kind = SheetKind.named(sheet).orElseThrow(NotFoundException::new);
        return ResponseEntity.ok().contentType(new MediaType("text", "css")).body(SheetStyle.onScreen(kind));
    }

    private String page(Model model, HttpServletRequest request, Optional<LabelRun> run) {
        String base = address.base(request);
        model.addAttribute("base", base);
        model.addAttribute("opensHereOnly", PortalAddress.isThisMachine(base));
        model.addAttribute("sheets", SheetKind.values());
        model.addAttribute("sentence", run.map(this::sentence).orElseGet(() -> display.text("label.sentence")));
        run.ifPresent(labels -> {
            model.addAttribute("shown", labels.placed().get(0));
            model.addAttribute("sheet", labels.sheet());
            model.addAttribute("pages", labels.pages());
        });
        return "label/labels";
    }

    private String sentence(LabelRun run) {
        int labels = run.labels().size();
        return run.sheet().single()
                ? display.text("label.sentence.single", labels)
                : display.text("label.sentence.sheets", labels, run.pages(), run.first());
    }

    private static String href(Membership membership, LabelForm form) {
        return UriComponentsBuilder.fromPath(membership.path("media/labels.pdf"))
                .queryParam("items", "{items}")
                .queryParam("sheet", "{sheet}")
                .queryParam("first", "{first}")
                .queryParam("copies", "{copies}")
                .encode()
                .buildAndExpand(form.items(), form.sheet(), form.first(), form.copies())
                .toUriString();
    }

    private static void remember(SheetKind sheet, HttpServletRequest request, HttpServletResponse response) {
        ResponseCookie cookie = ResponseCookie.from(REMEMBERED_SHEET, sheet.name())
                .path("/")
                .maxAge(REMEMBERED_FOR)
                .httpOnly(true)
                .secure(request.isSecure())
                .sameSite("Lax")
                .build();
        response.addHeader(HttpHeaders.SET_COOKIE, cookie.toString());
    }
}
