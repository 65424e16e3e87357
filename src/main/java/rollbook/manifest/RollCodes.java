package rollbook.manifest;

import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Recognises the production's roll codes in names, whatever their letter case; the longest code that fits counts. */
final class RollCodes {
    private final Map<String, String> codes = new HashMap<>();

    RollCodes(Collection<String> rollCodes) {
        for (String code : rollCodes) {
            codes.put(upper(code), code);
        }
    }

    /** The roll of a folder that is called by its code, or by its code and something behind a separator; or null. */
    @Nullable
    String ofFolder(String folder) {
        String name = upper(folder);
        for (int end = name.length(); end > 0; end--) {
            boolean separated = end == name.length() || !Character.isLetterOrDigit(name.charAt(end));
            String code = separated ? codes.get(name.substring(0, end)) : null;
            if (code != null) {
                return code;
            }
        }
        return null;
    }

    boolean isExact(String folder) {
        return codes.containsKey(upper(folder));
    }

    /** The roll of a clip, whose name is the roll's code, C and the clip's number (common practice); or null. */
    @Nullable
    String ofClip(String fileName) {
        String name = upper(fileName);
        for (int end = name.length() - 2; end > 0; end--) {
            boolean clip = name.charAt(end) == 'C' && Character.isDigit(name.charAt(end + 1));
            String code = clip ? codes.get(name.substring(0, end)) : null;
            if (code != null) {
                return code;
            }
        }
        return null;
    }

    /** The only roll that a document's name mentions as a word of its own, or null when there is none or several. */
    @Nullable
    String onlyOneIn(String documentName) {
        Set<String> found = new HashSet<>();
        for (int start = 0; start < documentName.length(); start++) {
            boolean wordStart = start == 0 || !Character.isLetterOrDigit(documentName.charAt(start - 1));
            String code = wordStart ? ofFolder(documentName.substring(start)) : null;
            if (code != null) {
                found.add(code);
            }
        }
        return found.size() == 1 ? found.iterator().next() : null;
    }

    private static String upper(String text) {
        return text.toUpperCase(Locale.ROOT);
    }
}
