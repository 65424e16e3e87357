package rollbook.verification;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import rollbook.manifest.RollWarning;
import rollbook.manifest.VerdictReason;
import rollbook.web.Display;

/** Says a verdict's reason in words; on record stand only the names, whichever part of the program gave them. */
final class ReasonKeys {
    private static final Map<String, String> KEYS = keys();

    private ReasonKeys() {}

    /** Between a reason's name and that of the person behind it. */
    static final char PERSON_FOLLOWS = ':';

    private static String text(Display display, String reason) {
        int name = reason.indexOf(PERSON_FOLLOWS);
        return name < 0
                ? display.text(key(reason))
                : display.text(key(reason.substring(0, name)), reason.substring(name + 1));
    }

    static List<String> texts(Display display, CopyVerdict verdict) {
        return verdict.reasons().stream().map(reason -> text(display, reason)).toList();
    }

    private static String key(String reason) {
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
