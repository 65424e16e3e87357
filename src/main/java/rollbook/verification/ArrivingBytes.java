package rollbook.verification;

import java.io.IOException;
import java.io.InputStream;
import java.io.InterruptedIOException;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rollbook.manifest.ManifestException;

/**
 * Bytes that a second thread reads while the first one still receives and keeps them. The receiver may run a little
 * ahead of the reader. Closing it ends the reader, however far it has come.
 */
final class ArrivingBytes<R> implements AutoCloseable {
    private static final Logger log = LoggerFactory.getLogger(ArrivingBytes.class);
    private static final int CHUNKS_AHEAD = 4;
    private static final long LOOK_MILLIS = 100;
    private static final byte[] END = {};

    /** What is made of the bytes. */
    interface Reader<R> {
        R read(InputStream in) throws IOException, ManifestException;
    }

    private final BlockingQueue<byte[]> chunks = new ArrayBlockingQueue<>(CHUNKS_AHEAD);
    private final FutureTask<R> reading;

    ArrivingBytes(Reader<R> reader) {
        reading = new FutureTask<>(() -> reader.read(new Arriving()));
        Thread thread = new Thread(reading, "arriving-document");
        thread.setDaemon(true);
        thread.start();
    }

    /** Hands on what has arrived; it must not be changed hereafter. Waits while the reader is too far behind. */
    void accept(byte[] chunk) throws IOException {
        if (chunk.length > 0) {
            put(chunk);
        }
    }

    private void put(byte[] chunk) throws IOException {
        try {
            boolean taken = false;
            while (!taken && !reading.isDone()) {
                taken = chunks.offer(chunk, LOOK_MILLIS, TimeUnit.MILLISECONDS);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new InterruptedIOException();
        }
    }

    /**
     * Says that all has arrived, and waits for what was read. Nothing, if the reader itself failed.
     *
     * @throws ManifestException if the document is to be refused
     */
    Optional<R> finish() throws IOException, ManifestException {
        put(END);
        try {
            return Optional.of(reading.get());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new InterruptedIOException();
        } catch (ExecutionException e) {
            if (e.getCause() instanceof ManifestException refusal) {
                throw refusal;
            }
            log.error("A document could not be read while it arrived", e.getCause());
            return Optional.empty();
        }
    }

    @Override
    public void close() {
        reading.cancel(true);
    }

    private final class Arriving extends InputStream {
        private byte[] chunk = END;
        private int at;
        private boolean ended;

        @Override
        public int read() throws IOException {
            return next() ? chunk[at++] & 0xFF : -1;
        }

        @Override
        public int read(byte[] bytes, int offset, int length) throws IOException {
            Objects.checkFromIndexSize(offset, length, bytes.length);
            if (length == 0) {
                return 0;
            }
            if (!next()) {
                return -1;
            }
            int count = Math.min(length, chunk.length - at);
            System.arraycopy(chunk, at, bytes, offset, count);
            at += count;
            return count;
        }

        private boolean next() throws IOException {
            while (at == chunk.length && !ended) {
                try {
                    chunk = chunks.take();
                } catch (InterruptedException e) {
                    throw new InterruptedIOException();
                }
                at = 0;
                ended = chunk == END;
            }
            return !ended;
        }
    }
}
