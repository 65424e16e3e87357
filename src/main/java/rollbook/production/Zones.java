package rollbook.production;

import java.time.ZoneId;
import java.util.List;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.springframework.validation.BindingResult;
import rollbook.web.Choice;
import rollbook.web.Typed;

/** The time zones that a production, or a person, may choose from. */
public final class Zones {
    private static final String UTC = "UTC";

    private Zones() {}

    public static List<Choice> choices() {
        var ids = new TreeSet<>(ZoneId.getAvailableZoneIds());
        return ids.stream().map(id -> new Choice(id, id.replace('_', ' '))).toList();
    }

    /** Where this server stands, if it knows. */
    public static String guess() {
        String here = ZoneId.systemDefault().getId();
        return isKnown(here) && !here.startsWith("Etc/") ? here : UTC;
    }

    /** Rejects the form’s {@code zone} if nobody knows it. */
    public static void check(@Nullable String id, BindingResult result) {
        if (Typed.isReadable(result) && !isKnown(id)) {
            result.rejectValue("zone", "production.zone.unknown");
        }
    }

    private static boolean isKnown(@Nullable String id) {
        return id != null && ZoneId.getAvailableZoneIds().contains(id);
    }
}
