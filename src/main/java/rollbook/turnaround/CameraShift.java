package rollbook.turnaround;

import java.util.List;
import rollbook.quantity.DataRate;

/**
 * A camera’s day.
 *
 * @param station where its cards go
 * @param recordedRate bytes on the card for each second of a take
 * @param framesPerSecond of the recording; tells an encoder that counts frames how long it takes
 * @param breaks in order, none overlapping, all between call and wrap
 * @param change time from getting a blank card until the camera can roll again; the first card of the day is in it at call
 */
public record CameraShift(
        String name,
        String station,
        String cardType,
        DataRate recordedRate,
        double framesPerSecond,
        long callMillis,
        long wrapMillis,
        List<Break> breaks,
        Takes takes,
        PullRule pull,
        Delay change) {
    public CameraShift {
        Invalid.ifBlank(name, "name");
        Invalid.unless(!recordedRate.isZero(), "recordedRate", "must be above zero");
        Invalid.unless(framesPerSecond > 0, "framesPerSecond", "must be above zero");
        Invalid.unless(callMillis >= 0, "callMillis", "must not be negative");
        Invalid.unless(callMillis < wrapMillis, "callMillis", "must be before wrapMillis");
        breaks = List.copyOf(breaks);
        long from = callMillis;
        for (Break pause : breaks) {
            Invalid.unless(pause.fromMillis() >= from, "breaks", "must be in order and after the call");
            from = pause.toMillis();
        }
        Invalid.unless(from <= wrapMillis, "breaks", "must be over before the wrap");
    }
}
