package rollbook.post;

import java.util.List;
import java.util.UUID;
import org.springframework.stereotype.Service;
import rollbook.post.MediumAtPost.Step;

/** What has come to post and what waits there, for those who tell people of it. */
@Service
public class PostStandings {
    private final PostBooks books;
    private final PostWords words;

    PostStandings(PostBooks books, PostWords words) {
        this.books = books;
        this.words = words;
    }

    /** In eight statements. */
    public PostStanding of(UUID productionId) {
        return books.of(productionId)
                .map(book -> new PostStanding(
                        book.place().placeName(),
                        book.rolls().size(),
                        book.received(),
                        book.proven(),
                        media(book, Step.LOST, Step.SEEK, Step.COMPARE, Step.AWAIT_LATE),
                        media(book, Step.AWAIT),
                        media(book, Step.SAY),
                        media(book, Step.READ),
                        media(book, Step.CLEAR, Step.ERASE, Step.SEND_BACK)))
                .orElseGet(
                        () -> new PostStanding(null, 0, 0, 0, List.of(), List.of(), List.of(), List.of(), List.of()));
    }

    private List<PostStanding.Medium> media(PostBook book, Step... steps) {
        return book.with(steps).stream()
                .map(medium -> new PostStanding.Medium(
                        medium.any().itemId(), medium.any().itemCode(), medium.rolls(), words.says(book, medium)))
                .toList();
    }
}
