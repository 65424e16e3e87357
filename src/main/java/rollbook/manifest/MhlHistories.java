package rollbook.manifest;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Gathers the chain files and hash lists of ASC MHL histories, of a folder and of those inside it, and judges them: one
 * history for each folder {@code ascmhl}. Hand in every file that {@link #takes}, in any order, then {@link #judge}.
 *
 * <p>Each hash list is read to its end here and its files are dropped: who wants them reads it again.
 */
public final class MhlHistories {
    static final String FOLDER = "ascmhl";
    private static final String SUFFIX = ".mhl";

    /** Bounds what thousands of hostile hash lists can make us keep; one that goes past it counts as unreadable. */
    private static final long MOST_CHARACTERS = 16_000_000;

    private final Map<String, MhlHistoryJudge> histories = new TreeMap<>();
    private long characters;

    /** Whether the file belongs to a history: its chain, or a hash list beside it. Shadow files ({@code ._}) don't. */
    public static boolean takes(String path) {
        String name = path.substring(path.lastIndexOf('/') + 1);
        String folder = IgnorePatterns.directoryOf(path);
        boolean inHistory = folder.equals(FOLDER) || folder.endsWith("/" + FOLDER);
        return inHistory && !name.startsWith("._") && (name.equals(MhlChain.FILE_NAME) || name.endsWith(SUFFIX));
    }

    /**
     * Reads a file of a history to its end; the caller closes it. A fault of the file is for {@link #judge} to tell.
     *
     * @throws IOException when the source fails
     */
    public void add(String path, InputStream in) throws IOException {
        if (!takes(path)) {
            throw new IllegalArgumentException("No file of a history: " + path);
        }
        String inNfc = Normalizer.normalize(path, Normalizer.Form.NFC);
        String folder = IgnorePatterns.directoryOf(IgnorePatterns.directoryOf(inNfc));
        MhlHistoryJudge history = histories.computeIfAbsent(folder, MhlHistoryJudge::new);
        if (path.endsWith(SUFFIX)) {
            history.add(hashList(inNfc, in));
        } else {
            addChain(history, in);
        }
    }

    private static void addChain(MhlHistoryJudge history, InputStream in) throws IOException {
        try {
            history.chain(MhlChain.read(in));
        } catch (ManifestException e) {
            history.chainUnreadable();
        }
    }

    private FoundManifest hashList(String path, InputStream in) throws IOException {
        Digesting content = new Digesting(in);
        ManifestHeader header = null;
        try {
            String name = path.substring(path.lastIndexOf('/') + 1);
            header = new ManifestReader().read(content, DocumentHints.named(name), entry -> {});
        } catch (ManifestException e) {
            // stays null
        }
        content.transferTo(OutputStream.nullOutputStream());
        Checksum c4 = Checksum.of(ChecksumAlgorithm.C4, content.digester.digest());
        FoundManifest found = header == null ? FoundManifest.unreadable(path, c4) : FoundManifest.of(path, c4, header);
        characters += found.characters();
        return characters > MOST_CHARACTERS ? FoundManifest.unreadable(path, c4) : found;
    }

    /** The histories by their folders, an outer one before those inside it. */
    public List<MhlHistory> judge() {
        List<MhlHistory> judged = new ArrayList<>();
        histories.values().forEach(history -> history.refer(histories));
        histories.values().forEach(history -> judged.add(history.judge()));
        return judged;
    }

    private static final class Digesting extends FilterInputStream {
        private final Digester digester = ChecksumAlgorithm.C4.digester();

        Digesting(InputStream in) {
            super(in);
        }

        @Override
        public int read() throws IOException {
            int value = super.read();
            if (value >= 0) {
                digester.update(new byte[] {(byte) value});
            }
            return value;
        }

        @Override
        public int read(byte[] bytes, int offset, int length) throws IOException {
            int count = super.read(bytes, offset, length);
            if (count > 0) {
                digester.update(bytes, offset, count);
            }
            return count;
        }

        @Override
        public long skip(long count) throws IOException {
            return readNBytes((int) Math.min(count, 8_192)).length;
        }

        @Override
        public boolean markSupported() {
            return false;
        }
    }
}
