package rollbook.post;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Size;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.web.NotFoundException;
import rollbook.web.Notice;
import rollbook.web.Typed;

/** The media at post and on their way there: say whether they are there, read them, release those that go back. */
@Controller
class PostMediaController {
    private final PostBooks books;
    private final PostWords words;
    private final ArrivalWords arrivals;

    PostMediaController(PostBooks books, PostWords words, ArrivalWords arrivals) {
        this.books = books;
        this.words = words;
        this.arrivals = arrivals;
    }

    /**
     * @param custodyId the link of the item's chain by which it came, as the person saw it
     * @param note for when it isn't there
     */
    record WordForm(
            @Nullable Long custodyId,
            boolean here,
            @Size(max = 400) @Nullable String note) {
        String noteText() {
            return Typed.text(note);
        }
    }

    @GetMapping("/p/{production}/post/media")
    String list(Membership membership, Model model) {
        Optional<PostBook> known = books.of(membership.productionId());
        if (known.isEmpty()) {
            return "redirect:" + membership.path("post");
        }
        PostBook book = known.get();
        model.addAttribute("book", book);
        model.addAttribute("words", words);
        model.addAttribute("sentence", words.mediaSentence(book));
        model.addAttribute("maySay", membership.may(Role.POST));
        return "post/media";
    }

    @GetMapping("/p/{production}/post/media/{item:[0-9a-fA-F-]{36}}")
    ModelAndView medium(Membership membership, @PathVariable UUID item) {
        PostBook book = book(membership);
        MediumAtPost medium = medium(book, item);
        Long custodyId = medium.stay() == null ? null : medium.stay().custodyId();
        return page(membership, book, medium, HttpStatus.OK).addObject("wordForm", new WordForm(custodyId, true, ""));
    }

    @PostMapping("/p/{production}/post/media/{item:[0-9a-fA-F-]{36}}/word")
    @AllowedFor(Role.POST)
    ModelAndView say(
            Membership membership,
            @PathVariable UUID item,
            @Valid @ModelAttribute WordForm form,
            BindingResult result,
            RedirectAttributes flash) {
        PostBook book = book(membership);
        MediumAtPost medium = medium(book, item);
        if (form.custodyId() == null && !result.hasErrors()) {
            throw new NotFoundException();
        }
        if (result.hasErrors()) {
            return page(membership, book, medium, HttpStatus.UNPROCESSABLE_CONTENT);
        }
        arrivals.say(membership, item, form.custodyId(), form.here(), form.noteText());
        flash.addFlashAttribute(
                "notice",
                Notice.of(
                        form.here() ? "post.said.here" : "post.said.not-here",
                        medium.any().itemCode(),
                        book.place().placeName()));
        return new ModelAndView("redirect:" + membership.path("post/media"));
    }

    private PostBook book(Membership membership) {
        return books.of(membership.productionId()).orElseThrow(NotFoundException::new);
    }

    private static MediumAtPost medium(PostBook book, UUID itemId) {
        return book.media().stream()
                .filter(medium -> medium.any().itemId().equals(itemId))
                .findFirst()
                .orElseThrow(NotFoundException::new);
    }

    private ModelAndView page(Membership membership, PostBook book, MediumAtPost medium, HttpStatus status) {
        return new ModelAndView("post/medium", status)
                .addObject("book", book)
                .addObject("medium", medium)
                .addObject("words", words)
                .addObject("sentence", words.says(book, medium))
                .addObject("maySay", membership.may(Role.POST) && medium.stay() != null);
    }
}
