package rollbook.forecast;

import java.time.ZoneId;
import java.util.List;
import org.springframework.stereotype.Component;
import rollbook.ordering.Flag;
import rollbook.web.Display;

/** How a flag stands and what became of it, in words. */
@Component
class FlagWords {
    private final Display display;
    private final StorageWords words;

    FlagWords(Display display, StorageWords words) {
        this.display = display;
        this.words = words;
    }

    StoragePage.FlagPart part(PoolFlag flag, ZoneId zone) {
        List<String> history = flag.acts().stream().map(act -> line(act, zone)).toList();
        return new StoragePage.FlagPart(
                flag.id(),
                says(flag),
                flag.state() == Flag.State.OPEN,
                flag.state() != Flag.State.OPEN,
                flag.last().number(),
                history);
    }

    private String says(PoolFlag flag) {
        PoolFlag.Act last = flag.last();
        return switch (flag.state()) {
            case OPEN -> display.text("forecast.flag-says.OPEN", words.date(flag.openedOn()));
            case ACKNOWLEDGED -> display.text("forecast.flag-says.ACKNOWLEDGED", last.byName());
            case SNOOZED ->
                display.text(
                        "forecast.flag-says.SNOOZED",
                        last.byName(),
                        last.until() == null ? "" : words.date(last.until()),
                        last.reason());
            case CLOSED_BY_ORDER, CLOSED_BY_FORECAST -> display.text("forecast.flag-says.CLOSED");
        };
    }

    private String line(PoolFlag.Act act, ZoneId zone) {
        return display.text(
                "forecast.flag-act." + act.kind(),
                display.moment(act.at(), zone),
                act.byName(),
                act.until() == null ? "" : words.date(act.until()),
                act.reason());
    }
}
