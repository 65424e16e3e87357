package rollbook.manifest;

import java.util.List;

/**
 * Something about a roll's files that a person should look at; it proves nothing by itself.
 *
 * @param count how many times
 * @param examples the first {@value #MOST_EXAMPLES} of them: paths, or clip names, as a range where several follow each other
 */
public record RollWarning(Kind kind, long count, List<String> examples) {

    public static final int MOST_EXAMPLES = 20;

    /** What was noticed. */
    public enum Kind {
        /** Clip numbers are left out. */
        CLIP_GAP(true),
        /** Frames are left out between the first and the last of a sequence. */
        FRAME_GAP(true),
        /** Files without a single byte. */
        EMPTY_FILE(true),
        /** Paths that differ in letter case only; they may land on a file system that can't tell them apart. */
        NAME_COLLISION(true),
        /** Files that were written before the production began, by their own dates. */
        DATED_BEFORE(true),
        /** Files that were written later than their list was sent, by their own dates. */
        DATED_AFTER(true),
        /** Equal files under the names of two clips. */
        SAME_CONTENT(false),
        /** Hidden files and those of operating systems. */
        SYSTEM_FILE(false),
        /** More different names than are looked at. */
        NOT_LOOKED_AT(true),
        /** The files are together larger than the card. */
        LARGER_THAN_CARD(true),
        /** The bytes are far from what the recorded minutes make in the roll's format. */
        OTHER_THAN_MINUTES(true),
        /** Clips are named by the code of another roll, or two documents of the card list different clips by one name. */
        CODE_USED_TWICE(true),
        /** A clip is listed for another roll too. */
        CLIP_IN_TWO_ROLLS(true);

        private final boolean remark;

        Kind(boolean remark) {
            this.remark = remark;
        }

        /** Whether it is told beside a verdict; others are for those who look at the roll. */
        public boolean isRemark() {
            return remark;
        }

        public String messageKey() {
            return "manifest.warning." + name();
        }
    }

    public RollWarning {
        examples = List.copyOf(examples);
    }
}
