package rollbook.manifest;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;

/**
 * Reads a manifest as a stream: GNU and BSD style checksum lists, tables, manifests of bags and ASC MHL 2 hash lists,
 * told apart by their content.
 *
 * <p>Memory does not grow with the document. A document that can't be understood to its end is refused; entries handed
 * out before that must then be dropped by the receiver. Safe for use by many threads.
 */
public final class ManifestReader {
    /** Longer than any line with a path that a file system of today can hold. */
    private static final int PEEK_BYTES = 8_192;

    /** As {@link #read(InputStream, DocumentHints, EntrySink)}, with nothing known but the document's name. */
    public ManifestHeader read(InputStream in, String fileName, EntrySink sink) throws IOException, ManifestException {
        return read(in, DocumentHints.named(fileName), sink);
    }

    /**
     * Hands each entry to the sink and returns the header once the document has ended.
     *
     * @throws ManifestException when the document is malformed, unsafe or of another kind
     */
    public ManifestHeader read(InputStream in, DocumentHints hints, EntrySink sink)
            throws IOException, ManifestException {
        BufferedInputStream content = new BufferedInputStream(in, PEEK_BYTES * 2);
        byte[] start = peek(content);
        refuseWideEncodings(start);
        content.skipNBytes(markLength(start));
        if (startsWithAngleBracket(start)) {
            return new AscMhlReader(content, hints.fileName()).read(sink);
        }
        return BagManifestReader.fits(start, start.length < PEEK_BYTES, hints.fileName())
                ? BagManifestReader.ofPayload(content, hints, !hints.plainPercents())
                        .read(sink)
                : readText(new LineReader(content, ChecksumListReader.isNulEnded(start)), hints, sink);
    }

    /** Whether the lines of a document are ended by NUL; the stream stays where it is and must know how to mark. */
    public static boolean isNulEnded(BufferedInputStream content) throws IOException {
        return ChecksumListReader.isNulEnded(peek(content));
    }

    private static byte[] peek(BufferedInputStream content) throws IOException {
        content.mark(PEEK_BYTES);
        byte[] start = content.readNBytes(PEEK_BYTES);
        content.reset();
        return start;
    }

    private static ManifestHeader readText(LineReader lines, DocumentHints hints, EntrySink sink)
            throws IOException, ManifestException {
        String first = lines.next();
        while (first != null && !lines.isNulEnded() && ChecksumListReader.isRemark(first.stripLeading())) {
            first = lines.next();
        }
        boolean list = first == null || ChecksumListReader.isListLine(first.stripLeading());
        TableHeader table = list ? null : TableHeader.of(first, lines.lineNumber());
        return table == null
                ? new ChecksumListReader(lines, hints).read(first, sink)
                : new TableReader(lines, table, hints).read(sink);
    }

    private static void refuseWideEncodings(byte[] start) throws ManifestException {
        if (start.length >= 2) {
            int mark = (start[0] & 0xFF) << 8 | start[1] & 0xFF;
            boolean markedWide = mark == 0xFEFF || mark == 0xFFFE;
            boolean wideXml = mark == 0x003C || mark == 0x3C00;
            if (markedWide || wideXml) {
                throw new ManifestException(ManifestProblem.UTF16, 1, 1);
            }
        }
    }

    /** Length of a UTF-8 byte order mark, which editors on some systems put in front. */
    private static int markLength(byte[] start) {
        boolean marked =
                start.length >= 3 && start[0] == (byte) 0xEF && start[1] == (byte) 0xBB && start[2] == (byte) 0xBF;
        return marked ? 3 : 0;
    }

    private static boolean startsWithAngleBracket(byte[] start) {
        int i = markLength(start);
        while (i < start.length && (start[i] == ' ' || start[i] == '\t' || start[i] == '\r' || start[i] == '\n')) {
            i++;
        }
        return i < start.length && start[i] == '<';
    }
}
