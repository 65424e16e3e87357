package rollbook.turnaround;

/** A reader or an adapter: one card has it at a time. */
final class Thing {
    final Part part;
    private boolean taken;
    private boolean dead;
    private long takenMillis;
    private long busyMillis;

    Thing(Part part) {
        this.part = part;
    }

    boolean isFree() {
        return !taken && !dead;
    }

    void take(long now) {
        taken = true;
        takenMillis = now;
    }

    void free(long now) {
        taken = false;
        busyMillis += now - takenMillis;
    }

    void die() {
        dead = true;
    }

    long busyMillis() {
        return busyMillis;
    }
}
