package rollbook.scenario;

import java.time.Duration;
import java.util.Set;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import rollbook.turnaround.CameraShift;
import rollbook.turnaround.CardStock;
import rollbook.turnaround.DayPlan;
import rollbook.turnaround.DayResult;
import rollbook.web.Display;

/** What playing a day tells, in sentences. */
@Component
class AnswerWords {
    private static final long DAY = 86_400_000;

    private final Display display;

    AnswerWords(Display display) {
        this.display = display;
    }

    String sentence(DayPlan plan, DayResult day) {
        Set<String> used = plan.cameras().stream().map(CameraShift::cardType).collect(Collectors.toSet());
        int cards = plan.cards().stream()
                .filter(stock -> used.contains(stock.cardType()))
                .mapToInt(CardStock::cards)
                .sum();
        String waiting = day.waitingMillis() < 60_000
                ? display.text("scenario.sentence.no-waiting", cards)
                : display.text("scenario.sentence.waiting", cards, minutes(day.waitingMillis()));
        return waiting + " " + proven(day);
    }

    private String proven(DayResult day) {
        if (day.unprovenCards() > 0) {
            return display.text("scenario.sentence.unproven", day.unprovenCards());
        }
        String at = time(day.lastProvenMillis());
        return day.overtimeMillis() < 60_000
                ? display.text("scenario.sentence.proven-by-wrap", at)
                : display.text("scenario.sentence.proven", at, length(day.overtimeMillis()));
    }

    /** 20:41, and 00:41 the next day. */
    String time(long millis) {
        return DayTime.daysAfter(millis) == 1
                ? display.text("scenario.next-day", DayTime.clock(millis - DAY))
                : DayTime.clock(millis);
    }

    /** 1 h 11 min. */
    String length(long millis) {
        return display.duration(Duration.ofMillis(millis));
    }

    /** 71 min, and 0 min where there is nothing. */
    String minutes(long millis) {
        return display.text("web.display.minutes", Math.round(DayTime.minutes(millis)));
    }
}
