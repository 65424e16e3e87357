package rollbook.production;

/** The kinds of media item. */
public enum MediaKind {
    CARD,
    READER,
    ADAPTER,
    DRIVE,
    ARRAY,
    TAPE;

    /** Whether copies are made onto items of this kind, so that a leg of the copy plan can name it. */
    public boolean holdsCopies() {
        return this == DRIVE || this == ARRAY || this == TAPE;
    }

    /** Whether items of this kind hold files at all and so have a capacity. */
    public boolean hasCapacity() {
        return this == CARD || holdsCopies();
    }
}
