package rollbook.verification;

import java.util.HashMap;
import java.util.Map;
import rollbook.manifest.RollWarning;
import rollbook.manifest.VerdictReason;

/** The message that says a verdict's reason; on record stand only the names, whichever part of the program gave them. */
final class ReasonKeys {
    private static final Map<String, String> KEYS = keys();

    private ReasonKeys() {}

    static String of(String reason) {
        String key = KEYS.get(reason);
        if (key == null) {
            throw new IllegalArgumentException("a verdict on record has an unknown reason: " + reason);
        }
        return key;
    }

    private static Map<String, String> keys() {
        Map<String, String> keys = new HashMap<>();
        for (CopyVerdict.Reason reason : CopyVerdict.Reason.values()) {
            keys.put(reason.name(), "verification.reason." + reason.name());
        }
        for (VerdictReason reason : VerdictReason.values()) {
            keys.put(reason.name(), reason.messageKey());
        }
        for (RollWarning.Kind warning : RollWarning.Kind.values()) {
            keys.put(warning.name(), warning.messageKey());
        }
        return keys;
    }
}
