package rollbook.turnaround;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import rollbook.turnaround.Replications.CameraWaiting;
import rollbook.turnaround.Replications.HourShare;
import rollbook.turnaround.Replications.Utilisation;

/** Sums up days. They are added in the order of replicates, so that sums are rounded alike each time. */
final class Tally {
    private static final Comparator<Part> BY_NAME =
            Comparator.comparing(Part::kind).thenComparing(Part::name);

    private final List<CameraShift> cameras;
    private final double[][] waitingMinutes;
    private final double[] waitingMinutesOfAll;
    private final double[] lastProvenMillis;
    private final double[] overtimeMinutes;
    private final List<Part> parts = new ArrayList<>();
    private final List<Double> utilisations = new ArrayList<>();
    private final Map<Long, Map<Part, Long>> heldMillis = new TreeMap<>();
    private int daysWithUnproven;
    private int days;

    Tally(DayPlan plan, int replicates) {
        cameras = plan.cameras();
        waitingMinutes = new double[cameras.size()][replicates];
        waitingMinutesOfAll = new double[replicates];
        lastProvenMillis = new double[replicates];
        overtimeMinutes = new double[replicates];
    }

    void add(DayResult day) {
        for (int camera = 0; camera < cameras.size(); camera++) {
            waitingMinutes[camera][days] = day.cameras().get(camera).waitingMillis() / Outcomes.MILLIS_PER_MINUTE;
        }
        waitingMinutesOfAll[days] = day.waitingMillis() / Outcomes.MILLIS_PER_MINUTE;
        lastProvenMillis[days] = day.lastProvenMillis();
        overtimeMinutes[days] = day.overtimeMillis() / Outcomes.MILLIS_PER_MINUTE;
        if (day.unprovenCards() > 0) {
            daysWithUnproven++;
        }
        for (int part = 0; part < day.parts().size(); part++) {
            PartUse use = day.parts().get(part);
            if (days == 0) {
                parts.add(use.part());
                utilisations.add(use.utilisation());
            } else {
                utilisations.set(part, utilisations.get(part) + use.utilisation());
            }
        }
        for (HourLimit limit : day.hours()) {
            heldMillis
                    .computeIfAbsent(limit.hourFromMillis(), hour -> new TreeMap<>(BY_NAME))
                    .merge(limit.part(), limit.heldMillis(), Long::sum);
        }
        days++;
    }

    Replications result() {
        List<CameraWaiting> waiting = new ArrayList<>();
        for (int camera = 0; camera < cameras.size(); camera++) {
            waiting.add(new CameraWaiting(
                    cameras.get(camera).name(), chance(waitingMinutes[camera]), Range.of(waitingMinutes[camera])));
        }
        List<Utilisation> used = new ArrayList<>();
        for (int part = 0; part < parts.size(); part++) {
            used.add(new Utilisation(parts.get(part), utilisations.get(part) / days));
        }
        return new Replications(
                days,
                chance(waitingMinutesOfAll),
                Range.of(waitingMinutesOfAll),
                waiting,
                Range.of(lastProvenMillis),
                Range.of(overtimeMinutes),
                Estimate.ofShare(daysWithUnproven, days),
                used,
                hours());
    }

    private static Estimate chance(double[] minutes) {
        int hits = (int) Arrays.stream(minutes).filter(m -> m > 0).count();
        return Estimate.ofShare(hits, minutes.length);
    }

    private List<HourShare> hours() {
        List<HourShare> shares = new ArrayList<>();
        heldMillis.forEach((hour, byPart) -> {
            double all = byPart.values().stream().mapToLong(Long::longValue).sum();
            byPart.entrySet().stream()
                    .sorted(Map.Entry.<Part, Long>comparingByValue().reversed())
                    .forEach(held -> shares.add(new HourShare(hour, held.getKey(), held.getValue() / all)));
        });
        return shares;
    }
}
