package rollbook.learning;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * Chance by name. Each stream of numbers begins anew from the seed and what it is for, so one more day, unit or pool
 * shifts no other's numbers, and two plans are compared on the same luck. The n-th number is the n-th replicate's.
 */
public record Streams(long seed) {
    private static final String VERSION = "1";
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    /** Numbers in (0, 1), never 0 or 1. */
    public double[] uniforms(int count, String purpose, Object... of) {
        UniformRandomProvider numbers = numbers(purpose, of);
        double[] uniforms = new double[count];
        for (int i = 0; i < count; i++) {
            uniforms[i] = uniform(numbers);
        }
        return uniforms;
    }

    /** Standard normal numbers, each from one uniform number by the inverse of the distribution. */
    public double[] normals(int count, String purpose, Object... of) {
        double[] normals = uniforms(count, purpose, of);
        for (int i = 0; i < count; i++) {
            normals[i] = NORMAL.inverseCumulativeProbability(normals[i]);
        }
        return normals;
    }

    private static double uniform(UniformRandomProvider numbers) {
        return ((numbers.nextLong() >>> 12) + 0.5) * 0x1p-52;
    }

    private UniformRandomProvider numbers(String purpose, Object... of) {
        String name = Stream.concat(Stream.of(VERSION, seed, purpose), Stream.of(of))
                .map(Object::toString)
                .collect(Collectors.joining("\n"));
        SplittableRandom mixer =
                new SplittableRandom(ByteBuffer.wrap(sha256(name)).getLong());
        return RandomSource.L64_X128_MIX.create(
                new long[] {mixer.nextLong(), mixer.nextLong(), mixer.nextLong(), mixer.nextLong()});
    }

    private static byte[] sha256(String text) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
