package rollbook.mail;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import rollbook.forecast.StorageOutlook;
import rollbook.production.Alarm;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.schedule.ShootingDay;

/** Decides what each kind of letter says to whom: a person's roles decide what is theirs to know and to do. */
final class Drafts {
    private static final int DIGEST_LOOKS_AHEAD_DAYS = 7;
    private static final int WEEK_DAYS = 7;
    /** What a week's letter has of hires: the next one is a week off. */
    private static final int HIRES_LOOK_AHEAD_DAYS = 14;

    private Drafts() {}

    /** @param wrapped the days, of which there is one at least */
    static Draft digest(Facts facts, List<ShootingDay> wrapped, Membership to) {
        Set<Role> roles = to.roles();
        List<Alarm> alarms = alarms(facts, to);
        List<Object> days = new ArrayList<>(wrapped.stream().map(Topics::day).toList());
        List<Said> sentences = new ArrayList<>();
        sentences.add(Said.of("mail.digest.wrapped", days, wrapped.size()));
        sentences.addAll(sentences(facts, roles, alarms));
        LocalDate soon = facts.today().plusDays(DIGEST_LOOKS_AHEAD_DAYS);
        Draft.Chapters chapters = new Draft.Chapters().add("mail.chapter.alarms", Topics.alarms(alarms), "today");
        boolean set = Topics.does(roles, Role.WRANGLER);
        boolean office = Topics.does(roles, Role.OFFICE);
        boolean post = Topics.does(roles, Role.POST);
        if (set || office || post) {
            chapters.add("mail.chapter.asked", Topics.asked(facts.proof()), "today");
        }
        if (set) {
            chapters.add("mail.chapter.clear", Topics.mayBeCleared(facts.proof()), "rolls");
        }
        if (set || post) {
            chapters.add("mail.chapter.held", Topics.held(facts.proof()), "rolls");
        }
        if (set) {
            chapters.add("mail.chapter.waiting", Topics.waiting(facts.proof()), "rolls");
        }
        chapters.add("mail.chapter.proof", List.of(new Draft.Entry(Topics.proven(facts.proof()), "safety")), "safety");
        if (post) {
            chapters.add("mail.chapter.post", Topics.post(facts.post()), "post");
        }
        storage(chapters, facts, roles);
        if (office) {
            chapters.add("mail.chapter.decide", Topics.toDecide(facts), "orders");
        }
        if (office || post) {
            chapters.add("mail.chapter.arrivals", Topics.arrivals(facts, soon), "orders");
        }
        if (office) {
            chapters.add("mail.chapter.hire", Topics.hires(facts, soon), "hire");
        }
        if (set || post) {
            chapters.add("mail.chapter.re-checks", Topics.rechecks(facts), "re-checks");
        }
        return new Draft(Said.of("mail.digest.subject", to.code(), days), sentences, chapters.list());
    }

    /** Answers first what a role asks first. */
    private static List<Said> sentences(Facts facts, Set<Role> roles, List<Alarm> alarms) {
        List<Said> sentences = new ArrayList<>();
        if (!alarms.isEmpty()) {
            sentences.add(Said.of("mail.alarms-stand", alarms.size()));
        }
        if (Topics.does(roles, Role.WRANGLER)) {
            sentences.add(Said.of(
                    "mail.digest.cards",
                    facts.proof().ready().size() + facts.proof().cleared().size(),
                    facts.proof().held().size() + facts.proof().bad().size()));
        } else if (Topics.does(roles, Role.OFFICE)) {
            sentences.add(outlook(facts));
        } else {
            sentences.add(Topics.proven(facts.proof()));
            if (roles.contains(Role.POST) && facts.post().placeName() != null) {
                sentences.add(Topics.received(facts.post()));
            }
        }
        return sentences;
    }

    private static Said outlook(Facts facts) {
        return facts.outlook() == null
                ? Said.of("mail.no-forecast")
                : Said.text(facts.outlook().sentence());
    }

    private static void storage(Draft.Chapters chapters, Facts facts, Set<Role> roles) {
        StorageOutlook outlook = facts.outlook();
        if (outlook != null && Topics.does(roles, Role.OFFICE, Role.POST, Role.READER)) {
            chapters.add("mail.chapter.flags", Topics.flags(outlook), "storage");
            chapters.add("mail.chapter.cover", Topics.cover(outlook), "storage");
        }
    }

    /** On a Monday. */
    static Draft weekly(Facts facts, Membership to) {
        LocalDate ends = facts.today().plusDays(WEEK_DAYS - 1L);
        List<Alarm> alarms = alarms(facts, to);
        List<Said> sentences = new ArrayList<>();
        List<ShootingDay> days = facts.days().stream()
                .filter(day ->
                        !day.date().isBefore(facts.today()) && !day.date().isAfter(ends))
                .toList();
        sentences.add(Said.of("mail.weekly.days", days.size()));
        if (!alarms.isEmpty()) {
            sentences.add(Said.of("mail.alarms-stand", alarms.size()));
        }
        sentences.add(outlook(facts));
        Draft.Chapters chapters = new Draft.Chapters()
                .add("mail.chapter.alarms", Topics.alarms(alarms), "today")
                .add("mail.chapter.days", Topics.days(days), "days");
        storage(chapters, facts, to.roles());
        chapters.add("mail.chapter.decide", Topics.toDecide(facts), "orders")
                .add("mail.chapter.orders", Topics.arrivals(facts, LocalDate.MAX), "orders")
                .add("mail.chapter.hire", Topics.hires(facts, facts.today().plusDays(HIRES_LOOK_AHEAD_DAYS)), "hire")
                .add("mail.chapter.costs", List.of(new Draft.Entry(Said.text(facts.costs()), "costs")), "costs")
                .add("mail.chapter.post", Topics.post(facts.post()), "post")
                .add("mail.chapter.re-checks", Topics.rechecks(facts), "re-checks")
                .add("mail.chapter.proof", List.of(new Draft.Entry(Topics.proven(facts.proof()), "safety")), "safety");
        return new Draft(Said.of("mail.weekly.subject", to.code(), facts.today()), sentences, chapters.list());
    }

    /** @param alarms of which the person hears for the first time; one at least */
    static Draft alarm(List<Alarm> alarms, Membership to) {
        Alarm first = alarms.get(0);
        Said says = new Said(first.messageKey(), first.args());
        boolean one = alarms.size() == 1;
        return new Draft(
                one
                        ? Said.of("mail.alarm.subject", to.code(), says)
                        : Said.of("mail.alarm.subject.many", to.code(), alarms.size()),
                List.of(one ? says : Said.of("mail.alarm.many", alarms.size())),
                new Draft.Chapters()
                        .add("mail.chapter.alarms", Topics.alarms(alarms), "today")
                        .list());
    }

    private static List<Alarm> alarms(Facts facts, Membership to) {
        return facts.alarms().stream()
                .filter(alarm -> alarm.concerns(to.roles()))
                .toList();
    }
}
