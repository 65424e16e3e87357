package rollbook.mail;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rollbook.forecast.StorageOutlook;
import rollbook.inventory.HireReturn;
import rollbook.mail.Draft.Entry;
import rollbook.post.PostStanding;
import rollbook.production.Alarm;
import rollbook.production.Role;
import rollbook.purchase.PurchaseOrder.State;
import rollbook.schedule.ShootingDay;
import rollbook.verification.ProofSummary;

/** What there is to say about each thing, each with the page that shows it. */
final class Topics {
    private Topics() {}

    static boolean does(Set<Role> roles, Role... work) {
        return roles.contains(Role.ADMINISTRATOR) || Stream.of(work).anyMatch(roles::contains);
    }

    static List<Entry> alarms(List<Alarm> alarms) {
        return alarms.stream()
                .map(alarm -> new Entry(
                        Said.of("mail.alarm.since", new Said(alarm.messageKey(), alarm.args()), alarm.since()),
                        alarm.page()))
                .toList();
    }

    /** Requests to clear a card without proof, which wait for a second person. */
    static List<Entry> asked(ProofSummary proof) {
        return proof.asked().stream()
                .map(asked -> new Entry(
                        Said.of("mail.asked", asked.askedByName(), asked.cardCode(), asked.rollCode()),
                        "overrides/" + asked.requestId()))
                .toList();
    }

    static List<Entry> mayBeCleared(ProofSummary proof) {
        return Stream.concat(
                        proof.cleared().stream().map(line -> roll("mail.cleared", line)),
                        proof.ready().stream().map(line -> roll("mail.ready", line)))
                .toList();
    }

    /** Those with a bad copy first. */
    static List<Entry> held(ProofSummary proof) {
        return Stream.concat(proof.bad().stream(), proof.held().stream())
                .map(line -> roll("mail.held", line))
                .toList();
    }

    private static Entry roll(String key, ProofSummary.RollLine line) {
        return new Entry(Said.of(key, line.cardCode(), line.rollCode(), line.says()), "rolls/" + line.rollId());
    }

    static List<Entry> waiting(ProofSummary proof) {
        List<Entry> waiting = new ArrayList<>();
        proof.exposed().forEach(line -> waiting.add(roll("mail.exposed", line)));
        if (proof.documentsUnassigned() > 0) {
            waiting.add(new Entry(Said.of("mail.documents.unassigned", proof.documentsUnassigned()), "documents"));
        }
        if (proof.documentsRejected() > 0) {
            waiting.add(new Entry(Said.of("mail.documents.rejected", proof.documentsRejected()), "documents"));
        }
        return waiting;
    }

    static Said proven(ProofSummary proof) {
        return Said.of("mail.proven", proof.copiesProven(), proof.copies(), proof.rolls());
    }

    /** The legs for which something is to be done. */
    static List<Entry> flags(StorageOutlook outlook) {
        return legs(outlook, true);
    }

    static List<Entry> cover(StorageOutlook outlook) {
        return legs(outlook, false);
    }

    private static List<Entry> legs(StorageOutlook outlook, boolean waitsForSomebody) {
        return outlook.legs().stream()
                .filter(leg -> leg.waitsForSomebody() == waitsForSomebody)
                .map(leg -> new Entry(Said.text(leg.sentence()), "storage"))
                .toList();
    }

    /** Orders that wait for somebody to approve or place them. */
    static List<Entry> toDecide(Facts facts) {
        return facts.orders().stream()
                .filter(order -> order.state() == State.PROPOSED || order.state() == State.APPROVED)
                .map(order -> new Entry(
                        Said.of(
                                order.state() == State.PROPOSED ? "mail.order.proposed" : "mail.order.approved",
                                order.number(),
                                order.items(),
                                supplier(order)),
                        order.page()))
                .toList();
    }

    /** @param until the last date that matters; what is late matters always */
    static List<Entry> arrivals(Facts facts, LocalDate until) {
        return facts.orders().stream()
                .filter(order ->
                        order.expectedOn() != null && !order.expectedOn().isAfter(until))
                .map(order -> new Entry(
                        Said.of(
                                order.expectedOn().isBefore(facts.today()) ? "mail.arrival.late" : "mail.arrival",
                                order.number(),
                                order.left(),
                                supplier(order),
                                order.expectedOn()),
                        order.page()))
                .toList();
    }

    private static Object supplier(Facts.Ordered order) {
        return order.supplierName().isEmpty() ? Said.of("mail.order.supplier") : order.supplierName();
    }

    /** What has come to post and what hasn't; nothing while nobody said which place is post. */
    static List<Entry> post(PostStanding post) {
        List<Entry> entries = new ArrayList<>();
        if (post.placeName() != null) {
            entries.add(new Entry(received(post), "post"));
            post.amiss()
                    .forEach(medium -> entries.add(new Entry(
                            Said.of("mail.post.medium", medium.itemCode(), medium.says()),
                            "post/media/" + medium.itemId())));
            addCount(entries, "mail.post.to-confirm", post.toConfirm().size());
            addCount(entries, "mail.post.to-check", post.toCheck().size());
            addCount(entries, "mail.post.to-release", post.toRelease().size());
        }
        return entries;
    }

    private static void addCount(List<Entry> entries, String key, int count) {
        if (count > 0) {
            entries.add(new Entry(Said.of(key, count), "post"));
        }
    }

    static Said received(PostStanding post) {
        return Said.of("mail.post.received", post.received(), post.rolls(), post.proven());
    }

    /** One entry for what goes back to a supplier on a date. */
    static List<Entry> hires(Facts facts, LocalDate until) {
        Map<LocalDate, Map<String, List<HireReturn>>> due = facts.hires().stream()
                .filter(hire -> !hire.hiredUntil().isAfter(until))
                .collect(Collectors.groupingBy(
                        HireReturn::hiredUntil,
                        TreeMap::new,
                        Collectors.groupingBy(HireReturn::supplier, TreeMap::new, Collectors.toList())));
        List<Entry> entries = new ArrayList<>();
        due.forEach((date, suppliers) ->
                suppliers.forEach((supplier, items) -> entries.add(hire(facts.today(), date, supplier, items))));
        return entries;
    }

    private static Entry hire(LocalDate today, LocalDate date, String supplier, List<HireReturn> items) {
        HireReturn first = items.get(0);
        return new Entry(
                Said.of(
                        date.isBefore(today) ? "mail.hire.late" : "mail.hire",
                        items.size(),
                        first.code(),
                        supplier.isEmpty() ? Said.of("mail.hire.supplier") : supplier,
                        date),
                items.size() == 1 ? "media/" + first.itemId() : "hire");
    }

    static List<Entry> rechecks(Facts facts) {
        String first = facts.rechecks().mostPressing();
        int overdue = facts.rechecks().overdue();
        int due = facts.rechecks().due();
        return first == null || overdue + due == 0
                ? List.of()
                : List.of(new Entry(Said.of("mail.re-checks", overdue, due, first), "re-checks"));
    }

    static List<Entry> days(List<ShootingDay> days) {
        return days.stream()
                .map(day -> new Entry(Said.of("mail.day.on", day(day), day.date()), "days/" + day.id()))
                .toList();
    }

    static Said day(ShootingDay day) {
        return Said.of("mail.day", day.unitName(), day.number());
    }
}
