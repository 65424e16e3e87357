package rollbook.turnaround;

import org.jspecify.annotations.Nullable;

/** A card of the float, wherever it is. */
final class Card {
    final int index;
    final int kind;
    final String name;
    final Timeline.Lane lane;
    private @Nullable CameraShift camera;
    private long recordedMillis;
    private long bytes;

    /** When it came to the station. */
    long arrivedMillis;

    /** Since when it waits for a reader. */
    long queuedMillis;

    /** @param kind which of the plan’s stocks it belongs to */
    Card(int index, int kind, String name, Timeline timeline) {
        this.index = index;
        this.kind = kind;
        this.name = name;
        this.lane = timeline.lane(Activity.Lane.CARD, name);
    }

    void putInto(CameraShift shift) {
        camera = shift;
    }

    void record(long millis) {
        recordedMillis += millis;
    }

    long recordedMillis() {
        return recordedMillis;
    }

    void pulledWith(long recordedBytes) {
        bytes = recordedBytes;
    }

    long bytes() {
        return bytes;
    }

    @Nullable
    CameraShift camera() {
        return camera;
    }

    @Nullable
    String cameraName() {
        return camera == null ? null : camera.name();
    }

    void erase() {
        camera = null;
        recordedMillis = 0;
        bytes = 0;
    }
}
