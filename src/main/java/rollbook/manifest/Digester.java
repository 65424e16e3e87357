package rollbook.manifest;

import com.dynatrace.hash4j.hashing.HashStream128;
import com.dynatrace.hash4j.hashing.HashStream64;
import com.dynatrace.hash4j.hashing.HashValue128;
import com.dynatrace.hash4j.hashing.Hashing;
import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/** Computes digests of one algorithm, of bytes that come piece by piece. Not safe for several threads. */
public abstract sealed class Digester {
    private Digester() {}

    static Digester of(ChecksumAlgorithm algorithm) {
        return switch (algorithm) {
            case MD5 -> new Platform("MD5");
            case SHA1 -> new Platform("SHA-1");
            case SHA256 -> new Platform("SHA-256");
            case SHA512, C4 -> new Platform("SHA-512");
            case XXH64 -> new Xxh64Bits(Hashing.xxh64().hashStream());
            case XXH3_64 -> new Xxh64Bits(Hashing.xxh3_64().hashStream());
            case XXH128 -> new Xxh128Bits(Hashing.xxh3_128().hashStream());
        };
    }

    public final Digester update(byte[] bytes) {
        return update(bytes, 0, bytes.length);
    }

    public abstract Digester update(byte[] bytes, int offset, int length);

    /** The digest of all bytes since the last one, in its canonical form; begins anew. */
    public abstract byte[] digest();

    private static final class Platform extends Digester {
        private final MessageDigest digest;

        Platform(String name) {
            try {
                digest = MessageDigest.getInstance(name);
            } catch (NoSuchAlgorithmException e) {
                throw new IllegalStateException("every Java platform of this version has " + name, e);
            }
        }

        @Override
        public Digester update(byte[] bytes, int offset, int length) {
            digest.update(bytes, offset, length);
            return this;
        }

        @Override
        public byte[] digest() {
            return digest.digest();
        }
    }

    private static final class Xxh64Bits extends Digester {
        private final HashStream64 stream;

        Xxh64Bits(HashStream64 stream) {
            this.stream = stream;
        }

        @Override
        public Digester update(byte[] bytes, int offset, int length) {
            stream.putBytes(bytes, offset, length);
            return this;
        }

        @Override
        public byte[] digest() {
            byte[] digest =
                    ByteBuffer.allocate(Long.BYTES).putLong(stream.getAsLong()).array();
            stream.reset();
            return digest;
        }
    }

    private static final class Xxh128Bits extends Digester {
        private final HashStream128 stream;

        Xxh128Bits(HashStream128 stream) {
            this.stream = stream;
        }

        @Override
        public Digester update(byte[] bytes, int offset, int length) {
            stream.putBytes(bytes, offset, length);
            return this;
        }

        @Override
        public byte[] digest() {
            HashValue128 value = stream.get();
            stream.reset();
            return ByteBuffer.allocate(2 * Long.BYTES)
                    .putLong(value.getMostSignificantBits())
                    .putLong(value.getLeastSignificantBits())
                    .array();
        }
    }
}
