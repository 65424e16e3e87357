package rollbook.post;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.web.Display;
import rollbook.web.FileAnswer;
import rollbook.web.NotFoundException;

/** Roll by roll, what set believes was sent to post against what post has; as a page and as a file. */
@Controller
class PostController {
    private final PostBooks books;
    private final PostWords words;
    private final Display display;

    PostController(PostBooks books, PostWords words, Display display) {
        this.books = books;
        this.words = words;
        this.display = display;
    }

    @GetMapping("/p/{production}/post")
    String list(
            Membership membership,
            @RequestParam(required = false) @Nullable String state,
            @RequestParam(required = false) @Nullable String q,
            Model model) {
        Optional<PostBook> known = books.of(membership.productionId());
        model.addAttribute("mayChoose", mayChoose(membership));
        if (known.isEmpty()) {
            model.addAttribute("sentence", display.text("post.sentence.no-place"));
            return "post/no-place";
        }
        PostBook book = known.get();
        PostFilter filter = PostFilter.of(state, q);
        List<PostDay> days = days(book, filter);
        model.addAttribute("book", book);
        model.addAttribute("sentence", words.sentence(book));
        model.addAttribute(
                "waiting", book.media().stream().filter(MediumAtPost::needsPost).count());
        model.addAttribute("filter", filter);
        model.addAttribute("states", PostFilter.occurring(book));
        model.addAttribute("days", days);
        model.addAttribute(
                "shown", days.stream().mapToInt(day -> day.rolls().size()).sum());
        model.addAttribute("csvHref", filter.address(membership.path("post.csv")));
        model.addAttribute("words", words);
        return "post/rolls";
    }

    @GetMapping("/p/{production}/post.csv")
    void export(
            Membership membership,
            @RequestParam(required = false) @Nullable String state,
            @RequestParam(required = false) @Nullable String q,
            HttpServletResponse response)
            throws IOException {
        PostBook book = books.of(membership.productionId()).orElseThrow(NotFoundException::new);
        FileAnswer.startCsv(response, "post-" + membership.code().toLowerCase(Locale.ROOT) + ".csv");
        new PostCsv(display).write(days(book, PostFilter.of(state, q)), response.getWriter());
    }

    private static List<PostDay> days(PostBook book, PostFilter filter) {
        return PostDay.of(book.rolls().stream().filter(filter::shows).toList());
    }

    static boolean mayChoose(Membership membership) {
        return membership.may(Role.POST, Role.OFFICE);
    }
}
