package rollbook.manifest;

/** Whole numbers that follow each other, such as the frames 1043 to 1187; both ends belong to it. */
public record NumberRange(int first, int last) {
    public NumberRange {
        if (first < 0 || last < first) {
            throw new IllegalArgumentException("no range: " + first + " to " + last);
        }
    }

    /** How many numbers it holds. */
    public long size() {
        return (long) last - first + 1;
    }

    /** 1043–1187, or 1043 alone. */
    @Override
    public String toString() {
        return padded(1);
    }

    /** The same with leading zeros, as it stands in file names. */
    String padded(int digits) {
        return first == last ? padded(first, digits) : padded(first, digits) + "–" + padded(last, digits);
    }

    static String padded(int number, int digits) {
        String plain = Integer.toString(number);
        return "0".repeat(Math.max(0, digits - plain.length())) + plain;
    }
}
