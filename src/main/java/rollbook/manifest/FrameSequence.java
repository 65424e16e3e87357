package rollbook.manifest;

import java.util.List;

/**
 * Frames as files, numbered one after the other.
 *
 * @param digits digits of a number in the file names, leading zeros included
 * @param files how many of the numbers from first to last are there
 * @param gaps the first of the ranges that are not
 */
public record FrameSequence(int digits, int first, int last, long files, List<NumberRange> gaps) {
    private static final int MOST_GAPS = 100;

    public FrameSequence {
        gaps = List.copyOf(gaps);
    }

    static FrameSequence of(FileGroup group) {
        List<NumberRange> runs = group.numbers.ranges();
        List<NumberRange> gaps = group.numbers.gaps();
        return new FrameSequence(
                group.digits(),
                runs.get(0).first(),
                runs.get(runs.size() - 1).last(),
                group.files(),
                gaps.subList(0, Math.min(MOST_GAPS, gaps.size())));
    }

    /** Numbers between the first and the last that are left out. */
    public long missing() {
        return new NumberRange(first, last).size() - files;
    }
}
