package rollbook.turnaround;

/** A card in a reader, and the reading back of what was written. */
final class Offload {
    final Card card;
    final Readers.Route route;

    /** Bytes that the card seems to have: more if this offload is slow, fewer if it is quick. */
    final double workBytes;

    final boolean provesBad;
    /** The hours’ number of its way into the reader. */
    final int ownWay;

    private final Thing reader;
    private final Timeline.Lane readerLane;
    boolean holdsReader = true;
    boolean reading;

    /** Of the writing or the reading back, counted from 0. */
    int step;

    int openFlows;

    Offload(
            Card card,
            Readers.Route route,
            int ownWay,
            Thing reader,
            Timeline.Lane readerLane,
            double workBytes,
            boolean provesBad) {
        this.card = card;
        this.route = route;
        this.ownWay = ownWay;
        this.reader = reader;
        this.readerLane = readerLane;
        this.workBytes = workBytes;
        this.provesBad = provesBad;
    }

    void show(Activity.Kind kind, long now) {
        card.lane.enter(kind, now, card, holdsReader ? reader.part.name() : null);
        if (holdsReader) {
            readerLane.enter(kind, now, card, reader.part.name());
        }
    }

    void leaveReader(long now) {
        holdsReader = false;
        readerLane.enter(null, now, null, null);
    }
}
