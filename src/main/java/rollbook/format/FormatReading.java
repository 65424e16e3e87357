package rollbook.format;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.validation.Errors;
import rollbook.quantity.Fraction;
import rollbook.recording.Audio;
import rollbook.recording.Coding;
import rollbook.recording.FrameRate;
import rollbook.recording.InvalidFormat;
import rollbook.recording.Overheads;
import rollbook.recording.PictureSize;
import rollbook.recording.RecordingFormat;
import rollbook.web.Typed;

/** Makes a recording format of what was typed, or says at each field why not. */
final class FormatReading {
    private static final String NUMBER_NEEDED = "typeMismatch.long";
    private static final BigDecimal MOST_MEGABITS = BigDecimal.valueOf(1_000_000_000);
    private static final int MEGA_DIGITS = 6;

    private final FormatForm form;
    private final Errors errors;

    private FormatReading(FormatForm form, Errors errors) {
        this.form = form;
        this.errors = errors;
    }

    /** The format, or nothing if the errors say what is wrong. */
    static Optional<RecordingFormat> read(FormatForm form, Errors errors) {
        return Optional.ofNullable(new FormatReading(form, errors).format());
    }

    static void reject(Errors errors, InvalidFormat wrong) {
        errors.rejectValue(wrong.field(), wrong.messageKey(), wrong.arguments().toArray(), null);
    }

    private @Nullable RecordingFormat format() {
        boolean picture = form.kind().picture();
        PictureSize size = picture
                ? attempt(() -> new PictureSize(
                        wholeNumber("pictureWidth", form.pictureWidth()),
                        wholeNumber("pictureHeight", form.pictureHeight())))
                : PictureSize.NONE;
        FrameRate rate = attempt(() -> FrameRate.parse(Typed.text(form.frameRate())));
        Coding coding = attempt(this::coding);
        Overheads overheads = picture ? attempt(this::overheads) : Overheads.NONE;
        Audio audio = attempt(() -> new Audio(
                wholeNumber("audioChannels", form.audioChannels()),
                wholeNumber("audioSampleRate", form.audioSampleRate()),
                wholeNumber("audioBits", form.audioBits())));
        if (form.name() == null || form.name().isBlank()) {
            errors.rejectValue("name", "NotBlank");
        }
        if (errors.hasErrors()
                || size == null
                || rate == null
                || coding == null
                || overheads == null
                || audio == null) {
            return null;
        }
        return attempt(() -> new RecordingFormat(form.name(), size, rate, coding, overheads, audio));
    }

    private Coding coding() {
        return switch (form.kind()) {
            case BAYER -> bayer();
            case COMPONENTS -> components();
            case FIXED_FRAME -> new Coding.FixedFrameBytes(longNumber("frameBytes", form.frameBytes()));
            case TARGET_BIT_RATE -> new Coding.TargetBitRate(bitsPerSecond(), reference());
            case COMPRESSED_BAYER -> new Coding.CompressionRatio(bayer(), ratio());
            case COMPRESSED_COMPONENTS -> new Coding.CompressionRatio(components(), ratio());
            case SOUND_ONLY -> new Coding.SoundOnly();
        };
    }

    private Coding.Bayer bayer() {
        return new Coding.Bayer(
                wholeNumber("bitsPerPhotosite", form.bitsPerPhotosite()), chosen("packing", form.packing()));
    }

    private Coding.Components components() {
        return new Coding.Components(
                chosen("sampling", form.sampling()),
                wholeNumber("bitsPerComponent", form.bitsPerComponent()),
                chosen("packing", form.packing()));
    }

    private long bitsPerSecond() {
        BigDecimal megabits = decimal("bitRate", form.bitRate());
        BigDecimal bits = megabits.movePointRight(MEGA_DIGITS).stripTrailingZeros();
        if (megabits.signum() == 0 || megabits.compareTo(MOST_MEGABITS) > 0 || bits.scale() > 0) {
            throw new InvalidFormat("bitRate", "format.invalid.bit-rate", MOST_MEGABITS);
        }
        return bits.longValueExact();
    }

    /** A frame rate says that it belongs to the field of the format's own rate. */
    private FrameRate reference() {
        try {
            return FrameRate.parse(Typed.text(form.referenceFrameRate()));
        } catch (InvalidFormat wrong) {
            throw new InvalidFormat(
                    "referenceFrameRate", wrong.messageKey(), wrong.arguments().toArray());
        }
    }

    private Fraction ratio() {
        return fraction("compressionRatio", form.compressionRatio(), "format.invalid.ratio");
    }

    private Overheads overheads() {
        return new Overheads(
                longNumber("frameOverhead", form.frameOverhead()),
                fraction("containerOverhead", form.containerOverhead(), "typeMismatch.double")
                        .dividedBy(100));
    }

    private static int wholeNumber(String field, @Nullable String typed) {
        long number = longNumber(field, typed);
        if (number > Integer.MAX_VALUE) {
            throw new InvalidFormat(field, "format.invalid.too-large");
        }
        return (int) number;
    }

    private static long longNumber(String field, @Nullable String typed) {
        String digits = Typed.text(typed).replace(",", "");
        if (!digits.matches("\\d{1,18}")) {
            throw new InvalidFormat(field, NUMBER_NEEDED);
        }
        return Long.parseLong(digits);
    }

    private static BigDecimal decimal(String field, @Nullable String typed) {
        String digits = Typed.text(typed).replace(",", "");
        if (!digits.matches("\\d{1,18}(\\.\\d{1,18})?")) {
            throw new InvalidFormat(field, "typeMismatch.double");
        }
        return new BigDecimal(digits);
    }

    private static Fraction fraction(String field, @Nullable String typed, String messageKey) {
        try {
            return Fraction.parse(Typed.text(typed));
        } catch (NumberFormatException e) {
            throw new InvalidFormat(field, messageKey);
        }
    }

    private static <T> T chosen(String field, @Nullable T value) {
        if (value == null) {
            throw new InvalidFormat(field, "NotNull");
        }
        return value;
    }

    private <T> @Nullable T attempt(Supplier<T> made) {
        try {
            return made.get();
        } catch (InvalidFormat wrong) {
            reject(errors, wrong);
            return null;
        }
    }
}
