package rollbook.demo;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.UUID;
import rollbook.manifest.Checksum;
import rollbook.manifest.ChecksumAlgorithm;

/**
 * A roll of the story with the files on its card. The files are nowhere: their sizes follow from the recording format,
 * their checksums from the seed.
 *
 * @param minutes as somebody reads them off the camera
 */
record ScriptedRoll(String code, Shot shot, BigDecimal minutes, List<Clip> clips) {
    private static final DateTimeFormatter IN_NAMES = DateTimeFormatter.ofPattern("uuMMdd", Locale.ROOT);
    private static final int FEWEST_CLIPS = 10;
    private static final int MOST_CLIPS = 40;

    /** A file of a roll, with the checksums of its bytes. */
    record Clip(String name, long sizeBytes, List<Checksum> checksums) {
        Checksum checksum(ChecksumAlgorithm algorithm) {
            return checksums.stream()
                    .filter(checksum -> checksum.algorithm() == algorithm)
                    .findFirst()
                    .orElseThrow();
        }
    }

    static ScriptedRoll shoot(String code, Shot shot, int tenthsOfMinutes, LocalDate date, long seed) {
        SplittableRandom random = new SplittableRandom(seed
                ^ UUID.nameUUIDFromBytes(code.getBytes(StandardCharsets.UTF_8)).getLeastSignificantBits());
        BigDecimal minutes = BigDecimal.valueOf(tenthsOfMinutes, 1);
        int count = Math.min(
                MOST_CLIPS,
                Math.max(FEWEST_CLIPS, tenthsOfMinutes * shot.clipsPerTenMinutes / 100 + random.nextInt(-2, 5)));
        List<Clip> clips = new ArrayList<>();
        for (long frames : shares(frames(shot, tenthsOfMinutes), count, random)) {
            String name = "%sC%03d_%s.mxf".formatted(code, clips.size() + 1, date.format(IN_NAMES));
            long size = shot.format.bytesPerFrame().times(frames).ceiling().longValueExact();
            clips.add(new Clip(
                    name,
                    size,
                    List.of(digest(ChecksumAlgorithm.MD5, random), digest(ChecksumAlgorithm.XXH64, random))));
        }
        return new ScriptedRoll(code, shot, minutes, List.copyOf(clips));
    }

    char camera() {
        return code.charAt(0);
    }

    long sizeBytes() {
        return clips.stream().mapToLong(Clip::sizeBytes).sum();
    }

    private static long frames(Shot shot, int tenthsOfMinutes) {
        return shot.format
                .frameRate()
                .framesPerSecond()
                .times(tenthsOfMinutes * 6L)
                .floor()
                .longValueExact();
    }

    /** Takes are of all lengths, but none is shorter than a few seconds. */
    private static List<Long> shares(long frames, int count, SplittableRandom random) {
        double[] weights = random.doubles(count, 0.25, 1.75).toArray();
        double all = 0;
        for (double weight : weights) {
            all += weight;
        }
        List<Long> shares = new ArrayList<>();
        long left = frames;
        for (int i = 0; i < count - 1; i++) {
            long share = (long) (frames * weights[i] / all);
            shares.add(share);
            left -= share;
        }
        shares.add(left);
        return shares;
    }

    private static Checksum digest(ChecksumAlgorithm algorithm, SplittableRandom random) {
        byte[] digest = new byte[algorithm.digestBytes()];
        random.nextBytes(digest);
        return Checksum.of(algorithm, digest);
    }
}
