package rollbook.inventory;

import static org.springframework.http.HttpStatus.UNPROCESSABLE_CONTENT;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.web.FileAnswer;
import rollbook.web.Notice;
import rollbook.web.Refusal;

/**
 * Imports a list of items: the file is read and shown with all that is wrong in it, and saved only when the reader of
 * that preview says so, whole or not at all. Its text travels with the page, so any instance can go on.
 */
@Controller
@RequestMapping("/p/{production}/media/import")
class ImportController {
    private final Inventory inventory;
    private final MediaList list;
    private final ItemFormPage page;
    private final ImportPage importPage;
    private final ColumnHeaders headers;

    ImportController(
            Inventory inventory, MediaList list, ItemFormPage page, ImportPage importPage, ColumnHeaders headers) {
        this.inventory = inventory;
        this.list = list;
        this.page = page;
        this.importPage = importPage;
        this.headers = headers;
    }

    @GetMapping
    @AllowedFor(Role.OFFICE)
    String ask(Membership membership, Model model) {
        model.addAttribute("importForm", new ImportForm(null, null));
        importPage.explain(model, page.words(membership));
        return "inventory/import";
    }

    @GetMapping("/example.csv")
    void example(Membership membership, HttpServletResponse response) throws IOException {
        FileAnswer.startCsv(response, "media-example.csv");
        importPage.writeExample(page.words(membership), response.getWriter());
    }

    @PostMapping
    @AllowedFor(Role.OFFICE)
    String preview(
            Membership membership,
            @ModelAttribute ImportForm form,
            BindingResult result,
            Model model,
            HttpServletResponse response)
            throws IOException {
        String text = text(form, result);
        ItemFormPage.Words words = page.words(membership);
        if (text == null) {
            response.setStatus(UNPROCESSABLE_CONTENT.value());
            importPage.explain(model, words);
            return "inventory/import";
        }
        return preview(text, read(membership, text, words), model, words);
    }

    @PostMapping("/confirm")
    @AllowedFor(Role.OFFICE)
    String confirm(
            Membership membership,
            @ModelAttribute ImportForm form,
            BindingResult result,
            Model model,
            HttpServletResponse response,
            RedirectAttributes flash)
            throws IOException {
        String text = text(form, result);
        ItemFormPage.Words words = page.words(membership);
        if (text == null) {
            response.setStatus(UNPROCESSABLE_CONTENT.value());
            importPage.explain(model, words);
            return "inventory/import";
        }
        ItemCsvReader.Result read = read(membership, text, words);
        if (read.usable()) {
            try {
                inventory.importAll(membership, read.items());
                flash.addFlashAttribute(
                        "notice", Notice.of("inventory.imported", read.items().size()));
                return "redirect:" + membership.path("media");
            } catch (Refusal takenMeanwhile) {
                // Somebody registered one of the codes just now: reading again finds which, and its line.
                read = read(membership, text, words);
            }
        }
        response.setStatus(UNPROCESSABLE_CONTENT.value());
        return preview(text, read, model, words);
    }

    private ItemCsvReader.Result read(Membership membership, String text, ItemFormPage.Words words) {
        return new ItemCsvReader(words.reading(), headers.all(), list.taken(membership.productionId())).read(text);
    }

    private String preview(String text, ItemCsvReader.Result read, Model model, ItemFormPage.Words words) {
        importPage.show(model, text, read, words);
        return "inventory/preview";
    }

    /** The list's text, or null with the reason noted. */
    private @Nullable String text(ImportForm form, BindingResult result) throws IOException {
        MultipartFile file = form.file();
        String csv = form.csv();
        if (file != null && form.hasFile()) {
            if (file.getSize() > UploadedText.MOST_BYTES) {
                return refuse(result, "inventory.problem.file-too-large", List.of());
            }
            try {
                csv = UploadedText.decode(file.getBytes());
            } catch (CharacterCodingException notText) {
                return refuse(result, "inventory.problem.file-encoding", List.of());
            }
        } else if (csv == null || csv.isBlank()) {
            return refuse(result, "inventory.problem.no-file", List.of());
        } else if (csv.getBytes(StandardCharsets.UTF_8).length > UploadedText.MOST_BYTES + UploadedText.MOST_LINES) {
            // The browser sends line ends as two characters, so the same list may come back that much longer.
            return refuse(result, "inventory.problem.file-too-large", List.of());
        }
        int lines = ItemCsvReader.lines(csv).length;
        if (lines > UploadedText.MOST_LINES) {
            return refuse(result, "inventory.problem.file-too-long", List.of(lines, UploadedText.MOST_LINES));
        }
        return csv;
    }

    private @Nullable String refuse(BindingResult result, String key, List<Object> args) {
        page.reject(result, "file", key, args);
        return null;
    }
}
