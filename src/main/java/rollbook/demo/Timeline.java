package rollbook.demo;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** What happens when. Scenes are added in any order and played in the order of time. */
final class Timeline {
    private final List<Scene> scenes = new ArrayList<>();

    /** Something that somebody does. */
    interface Act {
        void play() throws Exception;
    }

    private record Scene(Instant at, Act act) {}

    void at(Instant instant, Act act) {
        scenes.add(new Scene(instant, act));
    }

    /** Plays everything up to that instant; what would come later hasn't happened. */
    void playUntil(Instant now, DemoClock clock) throws Exception {
        List<Scene> inOrder = scenes.stream()
                .filter(scene -> !scene.at().isAfter(now))
                .sorted(Comparator.comparing(Scene::at))
                .toList();
        for (Scene scene : inOrder) {
            clock.tell(scene.at());
            scene.act().play();
        }
    }
}
