package rollbook.recording;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Counts frames from a time code (SMPTE ST 12-1).
 *
 * <p>Time code counts whole frames in a second, 30 where 30000/1001 run. Drop-frame counting, written with a semicolon, leaves
 * out the first numbers of each minute except every tenth, two at 30 and four at 60, to stay near the clock; no picture is
 * dropped.
 */
public final class Timecode {

    private static final Pattern TEXT = Pattern.compile("(\\d{2}):([0-5]\\d):([0-5]\\d)([:;])(\\d{2,3})");

    private Timecode() {}

    /**
     * The number of frames before the given one since 00:00:00:00.
     *
     * @param countPerSecond frame numbers in a second, such as 24 or 30
     * @throws IllegalArgumentException if the text is no time code, or a number that the count leaves out
     */
    public static long frameNumber(String text, int countPerSecond) {
        Matcher parts = TEXT.matcher(text);
        if (!parts.matches()) {
            throw new IllegalArgumentException("not a time code: " + text);
        }
        long minutes = Long.parseLong(parts.group(1)) * 60 + Long.parseLong(parts.group(2));
        long seconds = Long.parseLong(parts.group(3));
        long frames = Long.parseLong(parts.group(5));
        if (frames >= countPerSecond) {
            throw new IllegalArgumentException("frame number too high: " + text);
        }
        long counted = (minutes * 60 + seconds) * countPerSecond + frames;
        return parts.group(4).equals(";") ? counted - leftOut(text, countPerSecond, minutes, seconds, frames) : counted;
    }

    private static long leftOut(String text, int countPerSecond, long minutes, long seconds, long frames) {
        if (countPerSecond % 30 != 0) {
            throw new IllegalArgumentException("drop-frame needs a count of 30 or a multiple: " + text);
        }
        long perMinute = countPerSecond / 15;
        if (minutes % 10 != 0 && seconds == 0 && frames < perMinute) {
            throw new IllegalArgumentException("drop-frame leaves this number out: " + text);
        }
        return perMinute * (minutes - minutes / 10);
    }
}
