package rollbook.ordering;

import java.time.LocalDate;
import java.util.List;
import rollbook.learning.GeneratedShow;

/**
 * What people do by hand: the average so far times the days left.
 *
 * @param daysOfCover it is ordered when there is room for less than so many
 */
record Spreadsheet(double daysOfCover) implements Replay.Buyer {
    @Override
    public long packs(Replay replay, LocalDate evening) {
        List<GeneratedShow.Day> left = replay.show.plannedAfter(evening);
        double average = average(replay, evening, left);
        double room = replay.atHandBytes + replay.orderedBytes() - replay.writtenBytes(evening);
        if (room >= daysOfCover * average || left.isEmpty()) {
            return 0;
        }
        return (long) Math.ceil(Math.max(0, average * left.size() - room) / replay.offer.itemCapacityBytes());
    }

    /** As planned before anything was shot. */
    private static double average(Replay replay, LocalDate evening, List<GeneratedShow.Day> left) {
        long shotDays = replay.show.days().stream()
                .filter(day -> !day.date().isAfter(evening) && day.actualBytes() > 0)
                .count();
        return shotDays == 0
                ? left.stream()
                        .mapToLong(GeneratedShow.Day::plannedBytes)
                        .average()
                        .orElse(0)
                : (double) replay.writtenBytes(evening) / shotDays;
    }
}
