package rollbook.verification;

import java.nio.ByteBuffer;
import java.nio.channels.NonWritableChannelException;
import java.nio.channels.SeekableByteChannel;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;

/** The bytes of a stored document, from any place on: only the chunks that are asked for are fetched, one at a time. */
final class DocumentChannel implements SeekableByteChannel {
    private final DocumentContent content;
    private final UUID documentId;
    /** Where each chunk begins, and the end of the last one. */
    private final long[] starts;

    private long position;
    private int fetched = -1;
    private byte[] chunk = {};
    private boolean open = true;

    DocumentChannel(DocumentContent content, UUID documentId) {
        this.content = content;
        this.documentId = documentId;
        List<Integer> sizes = content.chunkSizes(documentId);
        starts = new long[sizes.size() + 1];
        for (int i = 0; i < sizes.size(); i++) {
            starts[i + 1] = starts[i] + sizes.get(i);
        }
    }

    @Override
    public int read(ByteBuffer target) {
        if (position >= size()) {
            return -1;
        }
        int number = Arrays.binarySearch(starts, position);
        number = number < 0 ? -number - 2 : number;
        fetch(number);
        int offset = (int) (position - starts[number]);
        int length = Math.min(target.remaining(), chunk.length - offset);
        target.put(chunk, offset, length);
        position += length;
        return length;
    }

    private void fetch(int number) {
        if (number == fetched) {
            return;
        }
        chunk = content.chunk(documentId, number).orElseThrow();
        fetched = number;
    }

    @Override
    public long position() {
        return position;
    }

    @Override
    public SeekableByteChannel position(long newPosition) {
        if (newPosition < 0) {
            throw new IllegalArgumentException("A position can't be " + newPosition);
        }
        position = newPosition;
        return this;
    }

    @Override
    public long size() {
        return starts[starts.length - 1];
    }

    @Override
    public int write(ByteBuffer source) {
        throw new NonWritableChannelException();
    }

    @Override
    public SeekableByteChannel truncate(long size) {
        throw new NonWritableChannelException();
    }

    @Override
    public boolean isOpen() {
        return open;
    }

    @Override
    public void close() {
        open = false;
    }
}
