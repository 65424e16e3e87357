package rollbook.turnaround;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;

/** Blank cards, longest blank first, and the cameras that wait for one, longest waiting first; for each kind of card. */
final class Shelf {
    private final List<Deque<Card>> blanks = new ArrayList<>();
    private final List<Deque<Camera>> waiting = new ArrayList<>();

    Shelf(int kinds) {
        for (int kind = 0; kind < kinds; kind++) {
            blanks.add(new ArrayDeque<>());
            waiting.add(new ArrayDeque<>());
        }
    }

    void put(Card card, long now) {
        card.erase();
        card.lane.enter(Activity.Kind.BLANK, now, card, null);
        blanks.get(card.kind).add(card);
    }

    void ask(Camera camera) {
        waiting.get(camera.cardKind).add(camera);
    }

    void withdraw(Camera camera) {
        waiting.get(camera.cardKind).remove(camera);
    }

    void handOut(long now) {
        for (int kind = 0; kind < blanks.size(); kind++) {
            Deque<Card> cards = blanks.get(kind);
            Deque<Camera> cameras = waiting.get(kind);
            while (!cards.isEmpty() && !cameras.isEmpty()) {
                cameras.remove().take(cards.remove(), now);
            }
        }
    }
}
