package rollbook.verification;

import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import rollbook.verification.SafetyLevel.Demand;

/**
 * How safely the copies of something are stored: whether they are three on two kinds of media with one off-site (as a
 * rule of thumb counts), and which storage level of the NDSA Levels of Digital Preservation, version 2, they reach.
 *
 * <p>Only copies that are complete and verified count, each medium once, and never the card: it will be erased. All
 * places that aren't off-site are one place, for one accident may reach them all.
 */
final class StorageLevels {
    static final int HIGHEST = 4;

    private StorageLevels() {}

    /**
     * A copy, as far as its safety goes.
     *
     * @param mediaType kind of medium in any words; equal words are one kind
     * @param threat the disaster that threatens the place, in any words; equal words are one threat, and an empty one may
     *     be any, so it adds none
     */
    record Kept(
            UUID itemId,
            String mediaType,
            UUID placeId,
            boolean offSite,
            String threat,
            boolean verified,
            boolean onCard) {

        private Optional<UUID> place() {
            return offSite ? Optional.of(placeId) : Optional.empty();
        }

        private String threatWord() {
            return threat.strip().toLowerCase(Locale.ROOT);
        }
    }

    /** Three copies, on two kinds of media, one of them off-site. */
    static boolean isThreeTwoOne(Collection<Kept> copies) {
        List<Kept> counting = counting(copies);
        return items(counting) >= 3
                && mediaTypes(counting) >= 2
                && counting.stream().anyMatch(Kept::offSite);
    }

    static SafetyLevel of(Collection<Kept> copies) {
        List<Kept> counting = counting(copies);
        int items = items(counting);
        int threats = threats(counting);
        return SafetyLevel.of(
                HIGHEST,
                List.of(
                        Demand.of(1, items >= 2, "storage.copies", items, 2),
                        Demand.of(1, places(counting) >= 2, "storage.another-place"),
                        Demand.of(2, items >= 3, "storage.copies", items, 3),
                        Demand.of(3, mediaTypes(counting) >= 2, "storage.another-kind"),
                        Demand.of(3, threats >= 2, "storage.another-threat"),
                        Demand.of(4, threats >= 3, "storage.threats", threats, 3)));
    }

    private static List<Kept> counting(Collection<Kept> copies) {
        return copies.stream()
                .filter(Kept::verified)
                .filter(copy -> !copy.onCard())
                .toList();
    }

    private static int items(List<Kept> copies) {
        return (int) copies.stream().map(Kept::itemId).distinct().count();
    }

    private static int mediaTypes(List<Kept> copies) {
        return (int) copies.stream().map(Kept::mediaType).distinct().count();
    }

    private static int places(List<Kept> copies) {
        return (int) copies.stream().map(Kept::place).distinct().count();
    }

    /** How many places can be chosen so that each is threatened by something else. */
    private static int threats(List<Kept> copies) {
        Set<String> away = words(copies, true);
        Set<String> here = new HashSet<>(words(copies, false));
        here.removeAll(away);
        return away.size() + (here.isEmpty() ? 0 : 1);
    }

    private static Set<String> words(List<Kept> copies, boolean offSite) {
        return copies.stream()
                .filter(copy -> copy.offSite() == offSite)
                .map(Kept::threatWord)
                .filter(word -> !word.isEmpty())
                .collect(Collectors.toSet());
    }
}
