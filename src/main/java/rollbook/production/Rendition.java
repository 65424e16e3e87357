package rollbook.production;

/** The files of a roll as recorded, or encoded without loss: other bytes and other checksums, the same pictures. */
public enum Rendition {
    AS_RECORDED,
    ENCODED
}
