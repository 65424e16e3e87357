package rollbook.turnaround;

import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** A camera through its day: set-up, take, set-up, take, while it has a card; both stand still in breaks. */
final class Camera {
    private enum Phase {
        SETTING_UP,
        /** A take is to begin or to go on. */
        DUE,
        ROLLING
    }

    final int index;
    final int cardKind;
    private final CameraShift shift;
    private final double bytesPerMilli;
    private final long cardBytes;
    private final long cardMillis;
    private final Agenda agenda;
    private final Shelf shelf;
    private final Errands errands;
    private final Timeline.Lane lane;
    private final Draws.Stream takes;
    private final Draws.Stream gaps;
    private final Draws.Stream changes;

    private Phase phase = Phase.SETTING_UP;
    private boolean working;
    private boolean onBreak;

    /** Of the set-up or the take. */
    private long leftMillis;

    private long sinceMillis;
    private int stamp;
    private @Nullable Card card;
    private boolean loaded;
    private long recordedMillis;
    private long recordedBytes;
    private long waitingMillis;
    private int cardsPulled;

    Camera(int index, int cardKind, CameraShift shift, long cardBytes, Errands errands, Playing day) {
        this.index = index;
        this.cardKind = cardKind;
        this.shift = shift;
        this.cardBytes = cardBytes;
        this.errands = errands;
        agenda = day.agenda;
        shelf = day.shelf;
        bytesPerMilli = BytesPerMilli.of(shift.recordedRate());
        cardMillis = (long) (cardBytes / bytesPerMilli);
        lane = day.timeline.lane(Activity.Lane.CAMERA, shift.name());
        takes = day.draws.stream("take", shift.name());
        gaps = day.draws.stream("gap", shift.name());
        changes = day.draws.stream("change", shift.name());
        agenda.enter(shift.callMillis(), Event.CAMERA_CALL, index, 0);
        for (Break pause : shift.breaks()) {
            agenda.enter(pause.fromMillis(), Event.BREAK_BEGINS, index, 0);
            agenda.enter(pause.toMillis(), Event.BREAK_OVER, index, 0);
        }
        agenda.enter(shift.wrapMillis(), Event.CAMERA_WRAP, index, 0);
    }

    void call(long now) {
        working = true;
        shelf.ask(this);
        leftMillis = shift.takes().gap().millis(gaps);
        goOn(now);
    }

    /** A blank card from the shelf. */
    void take(Card blank, long now) {
        if (lacksCard()) {
            waitingMillis += now - sinceMillis;
        }
        card = blank;
        blank.putInto(shift);
        blank.lane.enter(Activity.Kind.IN_CAMERA, now, blank, shift.name());
        long change = now == shift.callMillis() ? 0 : shift.change().millis(changes);
        agenda.enter(now + change, Event.CAMERA_LOADED, index, 0);
        show(now);
    }

    /** The new card is ready, unless the camera has wrapped meanwhile. */
    boolean load(long now) {
        if (card == null) {
            return false;
        }
        loaded = true;
        rollIfReady(now);
        show(now);
        return true;
    }

    /** The set-up is over. */
    boolean due(int stampOfEvent, long now) {
        if (stampOfEvent != stamp) {
            return false;
        }
        phase = Phase.DUE;
        leftMillis = Math.max(1, shift.takes().take().millis(takes));
        goOn(now);
        return true;
    }

    /** The take is over or the card is full. */
    boolean stop(int stampOfEvent, long now) {
        if (stampOfEvent != stamp) {
            return false;
        }
        Card filled = halt(now);
        if (leftMillis == 0) {
            phase = Phase.SETTING_UP;
            leftMillis = shift.takes().gap().millis(gaps);
            if (filled.recordedMillis() >= shift.pull().fillLevel() * cardMillis) {
                pull(filled, now);
            }
        } else {
            pull(filled, now);
        }
        goOn(now);
        return true;
    }

    void pause(long now) {
        interrupt(now);
        onBreak = true;
        if (shift.pull().atBreaks() && card != null && card.recordedMillis() > 0) {
            pull(card, now);
        }
        show(now);
    }

    void resume(long now) {
        onBreak = false;
        goOn(now);
    }

    void wrap(long now) {
        interrupt(now);
        working = false;
        if (card == null) {
            shelf.withdraw(this);
        } else if (card.recordedMillis() > 0) {
            pull(card, now);
        } else {
            shelf.put(card, now);
            card = null;
        }
        errands.cameraWrapped();
        show(now);
    }

    CameraDay result() {
        return new CameraDay(shift.name(), recordedMillis, recordedBytes, waitingMillis, cardsPulled);
    }

    private void goOn(long now) {
        if (onBreak) {
            return;
        }
        sinceMillis = now;
        if (phase == Phase.SETTING_UP) {
            agenda.enter(now + leftMillis, Event.CAMERA_DUE, index, ++stamp);
        }
        rollIfReady(now);
        show(now);
    }

    private void rollIfReady(long now) {
        if (phase == Phase.DUE && loaded && card != null && working && !onBreak) {
            phase = Phase.ROLLING;
            sinceMillis = now;
            long room = cardMillis - card.recordedMillis();
            agenda.enter(now + Math.min(leftMillis, room), Event.CAMERA_STOP, index, ++stamp);
        }
    }

    /** For a break or the wrap. */
    private void interrupt(long now) {
        if (phase == Phase.ROLLING) {
            halt(now);
        } else if (phase == Phase.SETTING_UP) {
            leftMillis -= now - sinceMillis;
            stamp++;
        } else if (lacksCard()) {
            waitingMillis += now - sinceMillis;
        }
    }

    private Card halt(long now) {
        Card rolling = Objects.requireNonNull(card);
        long millis = now - sinceMillis;
        rolling.record(millis);
        recordedMillis += millis;
        leftMillis -= millis;
        phase = Phase.DUE;
        stamp++;
        return rolling;
    }

    private void pull(Card filled, long now) {
        long bytes = filled.recordedMillis() >= cardMillis
                ? cardBytes
                : Math.min(cardBytes, Math.round(filled.recordedMillis() * bytesPerMilli));
        filled.pulledWith(bytes);
        recordedBytes += bytes;
        cardsPulled++;
        card = null;
        loaded = false;
        errands.expose(filled, now);
        if (working) {
            shelf.ask(this);
        }
    }

    private boolean lacksCard() {
        return working && !onBreak && phase == Phase.DUE && card == null;
    }

    private void show(long now) {
        Activity.Kind kind = null;
        if (working && onBreak) {
            kind = Activity.Kind.BREAK;
        } else if (phase == Phase.ROLLING) {
            kind = Activity.Kind.RECORDING;
        } else if (card != null && !loaded) {
            kind = Activity.Kind.CHANGING;
        } else if (lacksCard()) {
            kind = Activity.Kind.WAITING;
        }
        lane.enter(kind, now, card, null);
    }
}
