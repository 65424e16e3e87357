package rollbook.turnaround;

/** What no plan of a day may hold. The message begins with the field's name. */
final class Invalid {
    private Invalid() {}

    static void unless(boolean holds, String field, String what) {
        if (!holds) {
            throw new IllegalArgumentException(field + " " + what);
        }
    }

    static void ifBlank(String text, String field) {
        unless(!text.isBlank(), field, "must not be blank");
    }
}
