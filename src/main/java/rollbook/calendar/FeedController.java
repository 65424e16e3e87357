package rollbook.calendar;

import jakarta.servlet.http.HttpServletRequest;
import java.nio.charset.StandardCharsets;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.util.DigestUtils;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import rollbook.production.Membership;
import rollbook.production.Memberships;
import rollbook.web.NotFoundException;
import rollbook.web.PortalAddress;
import rollbook.web.Secret;

/** The calendars themselves, for programs that can't sign in: whoever has the address reads what its owner may read. */
@Controller
class FeedController {
    private static final MediaType CALENDAR = new MediaType("text", "calendar", StandardCharsets.UTF_8);

    private final Feeds feeds;
    private final Memberships memberships;
    private final Entries entries;
    private final PortalAddress address;

    FeedController(Feeds feeds, Memberships memberships, Entries entries, PortalAddress address) {
        this.feeds = feeds;
        this.memberships = memberships;
        this.entries = entries;
        this.address = address;
    }

    @GetMapping("/calendar/{secret}.ics")
    ResponseEntity<byte[]> feed(@PathVariable String secret, HttpServletRequest request) {
        Feed feed = feeds.of(Secret.of(secret)).orElseThrow(NotFoundException::new);
        Membership owner = memberships.of(feed.productionId(), feed.personId()).orElseThrow(NotFoundException::new);
        feeds.noteFetch(feed);
        byte[] text = CalendarText.of(owner.productionName(), address.base(request), entries.of(owner))
                .getBytes(StandardCharsets.UTF_8);
        // An answer of the same bytes is left out by Spring: 304.
        return ResponseEntity.ok()
                .contentType(CALENDAR)
                .cacheControl(CacheControl.noCache().cachePrivate())
                .eTag(DigestUtils.md5DigestAsHex(text))
                .body(text);
    }
}
