package rollbook.web;

import java.util.List;

/** One page of a longer list. Pages count from 1; {@code total} is the number of rows on all pages. */
public record Paged<T>(List<T> rows, int number, int size, long total) {
    public static final int SIZE = 50;

    public Paged {
        if (number < 1 || size < 1 || total < 0) {
            throw new IllegalArgumentException("page %d of size %d of %d rows".formatted(number, size, total));
        }
        rows = List.copyOf(rows);
    }

    /** Page {@code asked} of a list that is at hand; the last one if there are fewer. */
    public static <T> Paged<T> of(List<T> all, int asked) {
        int number = shown(asked, all.size());
        int from = (int) offset(number, SIZE);
        return new Paged<>(all.subList(from, Math.min(from + SIZE, all.size())), number, SIZE, all.size());
    }

    /** The page to show when page {@code asked} is asked for: the last one if there are fewer. */
    public static int shown(int asked, long total) {
        return shown(asked, SIZE, total);
    }

    public static int shown(int asked, int size, long total) {
        return (int) Math.min(Math.max(asked, 1), Math.max(1, (total + size - 1) / size));
    }

    /** Rows to skip in the query for page {@code number}; anything below 1 is read as the first page. */
    public static long offset(int number, int size) {
        return (Math.max(number, 1) - 1L) * size;
    }

    public long pages() {
        return Math.max(1, (total + size - 1) / size);
    }

    public boolean hasPrevious() {
        return number > 1;
    }

    public boolean hasNext() {
        return number < pages();
    }

    /** The position of this page's first row, from 1; 0 if the page is empty. */
    public long first() {
        return rows.isEmpty() ? 0 : offset(number, size) + 1;
    }

    public long last() {
        return rows.isEmpty() ? 0 : offset(number, size) + rows.size();
    }
}
