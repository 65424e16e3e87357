package rollbook.turnaround;

/**
 * Machine repair with spares, in closed form: cards go round between cameras that fill one each and readers that serve
 * one each. Filling and serving take exponential times; a card that finds all readers busy waits its turn, and a card
 * that finds all cameras with one lies on the shelf. Up to as many cards as cameras it is the classic model.
 *
 * @param fill mean time that a camera fills a card
 * @param service mean time that a reader is held by a card
 */
record CardQueue(int cards, int cameras, int readers, double fill, double service) {

    BirthDeath chain() {
        return new BirthDeath(cards, n -> Math.min(cards - n, cameras) / fill, n -> Math.min(n, readers) / service);
    }

    /** Cards filled in a unit of time. */
    double throughput() {
        return chain().birthRate();
    }

    double atReaders() {
        return chain().mean(n -> n);
    }

    double waiting() {
        return chain().mean(this::waiting);
    }

    /** Of a card, from the camera until a reader takes it. */
    double waitOfACard() {
        return waiting() / throughput();
    }

    /** From the camera until blank, by Little’s law. */
    double turnaround() {
        return atReaders() / throughput();
    }

    double idleCameras() {
        return chain().mean(this::idleCameras);
    }

    double chanceThatACameraIsIdle() {
        return chain().mean(n -> n > cards - cameras ? 1 : 0);
    }

    /** Part of the time in which all readers are busy. One of two meanings of “probability of waiting”. */
    double timeAllReadersAreBusy() {
        return chain().mean(this::allBusy);
    }

    /** Part of the cards that find all readers busy. The other meaning. */
    double cardsThatWait() {
        return chain().meanFoundByBirths(this::allBusy);
    }

    /** Cards in the queue when so many are at the readers. */
    double waiting(int atReaders) {
        return Math.max(0, atReaders - readers);
    }

    double idleCameras(int atReaders) {
        return Math.max(0, cameras - (cards - atReaders));
    }

    private double allBusy(int atReaders) {
        return atReaders >= readers ? 1 : 0;
    }
}
