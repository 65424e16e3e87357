package rollbook.turnaround;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rollbook.quantity.DataRate;
import rollbook.quantity.Fraction;
import rollbook.turnaround.LearnedRate.Basis;
import rollbook.turnaround.OffloadPart.CardWay;
import rollbook.turnaround.OffloadPart.WrittenKind;

/**
 * How fast the show's own offloads ran, instead of what makers print. The rules are common sense, no source; what a
 * few sessions with a wrong end or wrong bytes say is outvoted, as all figures are medians.
 *
 * <pre>
 *   three sessions through reader A onto drives at 400, 410, 420 MB/s; stated are 480 for A and 500 for the drives.
 *   A is stated as the slowest, so A is charged: 410 MB/s. The drives keep their 500.
 *   Three through reader B (stated 450) onto the same drives at 490: B passes 490, whatever is stated.
 * </pre>
 */
public final class MeasuredRates {
    /** Fewer teach nothing if anything is stated. Common sense, no source. */
    private static final int SESSIONS_NEEDED = 3;

    /** A part that passed a tenth more elsewhere didn’t hold a session back. Common sense, no source. */
    private static final Fraction CLEARLY_FASTER = Fraction.of(11, 10);

    private final Map<OffloadPart, DataRate> stated;
    private final Map<Combination, Sample> measured;
    private final Map<OffloadPart, LearnedRate> passed = new HashMap<>();
    private final Map<OffloadPart, List<DataRate>> charged = new HashMap<>();

    private MeasuredRates(Map<OffloadPart, DataRate> stated, Map<Combination, Sample> measured) {
        this.stated = Map.copyOf(stated);
        this.measured = measured;
        measured.forEach(this::pass);
        measured.forEach(this::charge);
    }

    /**
     * @param sessions of the show, those that broke off or still run among them, for they slow others down
     * @param stated what the catalogue says of a way (the slowest of card, adapter and reader) and of written media, as
     *     far as it says something
     */
    public static MeasuredRates of(List<PastSession> sessions, Map<OffloadPart, DataRate> stated) {
        Map<Combination, Sample> all = byCombination(sessions);
        List<SpanOfWork> spans = sessions.stream()
                .map(session -> SpanOfWork.of(session, usual(all.get(session.combination()))))
                .toList();
        Map<Combination, Sample> best = byCombination(SpanOfWork.undisturbed(spans));
        all.forEach(best::putIfAbsent);
        return new MeasuredRates(stated, best);
    }

    /** The rate to plan a part with, or empty if nothing is known of it. */
    public Optional<LearnedRate> of(OffloadPart part) {
        List<DataRate> rates = charged.getOrDefault(part, List.of());
        DataRate catalogue = stated.get(part);
        if (rates.size() >= SESSIONS_NEEDED || catalogue == null && !rates.isEmpty()) {
            return Optional.of(new LearnedRate(median(rates), Basis.MEASURED, rates.size()));
        }
        LearnedRate seen = passed.get(part);
        if (catalogue == null || seen != null && isEnough(seen) && seen.rate().compareTo(catalogue) > 0) {
            return Optional.ofNullable(seen);
        }
        return Optional.of(new LearnedRate(catalogue, Basis.STATED, 0));
    }

    /**
     * What a session of this combination should reach alone: the median of such sessions, if there were enough, else
     * the slowest of its parts. Empty if nothing is known.
     */
    public Optional<Expected> expected(CardWay way, Collection<WrittenKind> kinds) {
        Combination combination = new Combination(way, Set.copyOf(kinds));
        Sample sample = measured.get(combination);
        if (sample != null && sample.rates.size() >= SESSIONS_NEEDED) {
            LearnedRate rate = new LearnedRate(sample.median, Basis.MEASURED, sample.rates.size());
            return Optional.of(new Expected(rate, culprit(combination, rate.rate())));
        }
        List<Expected> limits = combination.parts().stream()
                .flatMap(part -> of(part).map(rate -> new Expected(rate, part)).stream())
                .toList();
        // Where nothing is stated, what has passed is no limit, unless there is no other to go by.
        return slowest(limits.stream().filter(this::limits).toList()).or(() -> slowest(limits));
    }

    /**
     * @param slowest the part that holds the others back; null if the parts were all seen to be faster than the whole,
     *     so that it is something else, such as what they are plugged into
     */
    public record Expected(LearnedRate rate, @Nullable OffloadPart slowest) {}

    private boolean limits(Expected limit) {
        return limit.rate().basis() != Basis.PASSED || stated.containsKey(limit.slowest());
    }

    private static Optional<Expected> slowest(List<Expected> limits) {
        return limits.stream().min(Comparator.comparing(limit -> limit.rate().rate()));
    }

    /** What sessions of a combination reached. */
    private record Sample(List<DataRate> rates, DataRate median) {
        Sample(List<DataRate> rates) {
            this(rates, MeasuredRates.median(rates));
        }
    }

    private static @Nullable DataRate usual(@Nullable Sample alike) {
        return alike == null ? null : alike.median;
    }

    private static Map<Combination, Sample> byCombination(List<PastSession> sessions) {
        Map<Combination, List<DataRate>> rates = new LinkedHashMap<>();
        for (PastSession session : sessions) {
            session.rate()
                    .ifPresent(rate -> rates.computeIfAbsent(session.combination(), key -> new ArrayList<>())
                            .add(rate));
        }
        Map<Combination, Sample> samples = new LinkedHashMap<>();
        rates.forEach((combination, alike) -> samples.put(combination, new Sample(alike)));
        return samples;
    }

    private void pass(Combination combination, Sample sample) {
        LearnedRate seen = new LearnedRate(sample.median, Basis.PASSED, sample.rates.size());
        for (OffloadPart part : combination.parts()) {
            passed.merge(part, seen, MeasuredRates::worthMore);
        }
    }

    /** Enough sessions before few, and then the faster. */
    private static LearnedRate worthMore(LearnedRate one, LearnedRate other) {
        if (isEnough(one) != isEnough(other)) {
            return isEnough(one) ? one : other;
        }
        return one.rate().compareTo(other.rate()) >= 0 ? one : other;
    }

    private static boolean isEnough(LearnedRate rate) {
        return rate.sessions() >= SESSIONS_NEEDED;
    }

    private void charge(Combination combination, Sample sample) {
        OffloadPart culprit = culprit(combination, sample.median);
        if (culprit != null) {
            charged.computeIfAbsent(culprit, key -> new ArrayList<>()).addAll(sample.rates);
        }
    }

    /** The part that is stated as the slowest, of those that weren’t seen to be faster; the way if nothing is stated. */
    private @Nullable OffloadPart culprit(Combination combination, DataRate reached) {
        DataRate clearlyFaster = reached.times(CLEARLY_FASTER);
        return combination.parts().stream()
                .filter(part ->
                        !isEnough(passed.get(part)) || passed.get(part).rate().compareTo(clearlyFaster) <= 0)
                .min(Comparator.comparing(stated::get, Comparator.nullsLast(Comparator.naturalOrder())))
                .orElse(null);
    }

    private static DataRate median(List<DataRate> rates) {
        List<DataRate> sorted = rates.stream().sorted().toList();
        DataRate low = sorted.get((sorted.size() - 1) / 2);
        DataRate high = sorted.get(sorted.size() / 2);
        return low.plus(high).times(Fraction.of(1, 2));
    }
}
