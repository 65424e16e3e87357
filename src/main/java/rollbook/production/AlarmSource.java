package rollbook.production;

import java.util.List;
import java.util.UUID;

/** A module that raises alarms. Each is a bean; whoever tells people of alarms asks all of them every minute. */
public interface AlarmSource {
    /** The alarms that stand now, in one statement. */
    List<Alarm> alarms(UUID productionId);
}
