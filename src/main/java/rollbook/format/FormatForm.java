package rollbook.format;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.jspecify.annotations.Nullable;
import rollbook.quantity.Fraction;
import rollbook.recording.Audio;
import rollbook.recording.Coding;
import rollbook.recording.FrameRate;
import rollbook.recording.Overheads;
import rollbook.recording.Packing;
import rollbook.recording.PictureSize;
import rollbook.recording.RecordingFormat;
import rollbook.recording.Sampling;

/**
 * A recording format as it is typed. All are texts, so that everything that is wrong can be shown at once and nothing
 * typed is lost; which of them count depends on the kind of coding. {@link FormatReading} makes a format of them.
 *
 * @param bitRate in Mb/s
 * @param frameOverhead in bytes
 * @param containerOverhead in per cent
 * @param audioSampleRate in Hz
 */
record FormatForm(
        CodingKind kind,
        String name,
        @Nullable String pictureWidth,
        @Nullable String pictureHeight,
        @Nullable String frameRate,
        @Nullable String bitsPerPhotosite,
        @Nullable String bitsPerComponent,
        @Nullable Sampling sampling,
        @Nullable Packing packing,
        @Nullable String frameBytes,
        @Nullable String bitRate,
        @Nullable String referenceFrameRate,
        @Nullable String compressionRatio,
        @Nullable String frameOverhead,
        @Nullable String containerOverhead,
        @Nullable String audioChannels,
        @Nullable String audioSampleRate,
        @Nullable String audioBits,
        int version) {

    private static final int MEGA_DIGITS = 6;
    private static final RecordingFormat FIRST = new RecordingFormat(
            "-",
            new PictureSize(4096, 2160),
            FrameRate.of(24),
            new Coding.Bayer(12, Packing.PACKED),
            Overheads.NONE,
            Audio.NONE);

    /** A new format of that kind, with a common picture size and rate filled in. */
    static FormatForm blank(CodingKind kind) {
        FormatForm form = of(FIRST, 0).ofKind(kind);
        return kind == CodingKind.SOUND_ONLY ? form.named("").withChannels("2") : form.named("");
    }

    static FormatForm of(RecordingFormat format, int version) {
        Coding coding = format.coding();
        Coding stored = coding instanceof Coding.CompressionRatio compressed ? compressed.uncompressed() : coding;
        Coding.Bayer bayer = stored instanceof Coding.Bayer mosaic ? mosaic : new Coding.Bayer(12, Packing.PACKED);
        Coding.Components components = stored instanceof Coding.Components parts
                ? parts
                : new Coding.Components(Sampling.S422, 10, Packing.PACKED);
        Coding.@Nullable TargetBitRate target = coding instanceof Coding.TargetBitRate rate ? rate : null;
        return new FormatForm(
                CodingKind.of(coding),
                format.name(),
                format.size().isNone() ? "" : Integer.toString(format.size().width()),
                format.size().isNone() ? "" : Integer.toString(format.size().height()),
                format.frameRate().text(),
                Integer.toString(bayer.bitsPerPhotosite()),
                Integer.toString(components.bitsPerComponent()),
                components.sampling(),
                stored instanceof Coding.Components ? components.packing() : bayer.packing(),
                coding instanceof Coding.FixedFrameBytes fixed ? Long.toString(fixed.bytes()) : "",
                target == null ? "" : megabits(target.bitsPerSecond()),
                target == null ? format.frameRate().text() : target.reference().text(),
                coding instanceof Coding.CompressionRatio compressed ? plain(compressed.ratio()) : "",
                Long.toString(format.overheads().bytesPerFrame()),
                plain(format.overheads().container().times(100)),
                Integer.toString(format.audio().channels()),
                Integer.toString(format.audio().samplesPerSecond()),
                Integer.toString(format.audio().bitsPerSample()),
                version);
    }

    FormatForm ofKind(CodingKind other) {
        return new FormatForm(
                other,
                name,
                pictureWidth,
                pictureHeight,
                frameRate,
                bitsPerPhotosite,
                bitsPerComponent,
                sampling,
                packing,
                frameBytes,
                bitRate,
                referenceFrameRate,
                compressionRatio,
                frameOverhead,
                containerOverhead,
                audioChannels,
                audioSampleRate,
                audioBits,
                version);
    }

    private FormatForm named(String other) {
        return new FormatForm(
                kind,
                other,
                pictureWidth,
                pictureHeight,
                frameRate,
                bitsPerPhotosite,
                bitsPerComponent,
                sampling,
                packing,
                frameBytes,
                bitRate,
                referenceFrameRate,
                compressionRatio,
                frameOverhead,
                containerOverhead,
                audioChannels,
                audioSampleRate,
                audioBits,
                version);
    }

    private FormatForm withChannels(String channels) {
        return new FormatForm(
                kind,
                name,
                pictureWidth,
                pictureHeight,
                frameRate,
                bitsPerPhotosite,
                bitsPerComponent,
                sampling,
                packing,
                frameBytes,
                bitRate,
                referenceFrameRate,
                compressionRatio,
                frameOverhead,
                containerOverhead,
                channels,
                audioSampleRate,
                audioBits,
                version);
    }

    private static String megabits(long bitsPerSecond) {
        return BigDecimal.valueOf(bitsPerSecond, MEGA_DIGITS)
                .stripTrailingZeros()
                .toPlainString();
    }

    /** As a decimal if it has a short one, else as the fraction itself. */
    private static String plain(Fraction fraction) {
        BigDecimal decimal = fraction.toBigDecimal(MEGA_DIGITS, RoundingMode.DOWN);
        return Fraction.of(decimal).equals(fraction)
                ? decimal.stripTrailingZeros().toPlainString()
                : fraction.toString();
    }
}
