package rollbook.format;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.quantity.Fraction;
import rollbook.recording.Audio;
import rollbook.recording.FrameRate;
import rollbook.recording.InvalidFormat;
import rollbook.recording.Overheads;
import rollbook.recording.PictureSize;
import rollbook.recording.RecordingFormat;

/** A recording format as a row of its table and back, exact both ways. */
final class FormatRows {
    static final String COLUMNS = """
            f.id, f.name, f.width_photosites, f.height_photosites, f.frame_rate_numerator, f.frame_rate_denominator,
            f.coding, f.coding_values, f.frame_overhead_bytes, f.container_overhead_percent, f.audio_channels,
            f.audio_sample_rate_hz, f.audio_bits, f.version
            """;

    private static final int PERCENT_DECIMALS = 3;

    private FormatRows() {}

    static NamedFormat read(ResultSet row, int number) throws SQLException {
        String name = row.getString("name");
        RecordingFormat format = new RecordingFormat(
                name,
                new PictureSize(row.getInt("width_photosites"), row.getInt("height_photosites")),
                FrameRate.of(row.getLong("frame_rate_numerator"), row.getLong("frame_rate_denominator")),
                CodingJson.read(CodingKind.valueOf(row.getString("coding")), row.getString("coding_values")),
                new Overheads(
                        row.getLong("frame_overhead_bytes"),
                        Fraction.of(row.getBigDecimal("container_overhead_percent"))
                                .dividedBy(100)),
                new Audio(row.getInt("audio_channels"), row.getInt("audio_sample_rate_hz"), row.getInt("audio_bits")));
        return new NamedFormat(row.getObject("id", UUID.class), name, format);
    }

    /** @throws InvalidFormat if a value is finer than the table can keep */
    static Map<String, @Nullable Object> values(RecordingFormat format) {
        Map<String, @Nullable Object> values = new LinkedHashMap<>();
        values.put("name", format.name());
        values.put("width", format.size().width());
        values.put("height", format.size().height());
        values.put("rateNumerator", storable(format.frameRate()).numerator().longValueExact());
        values.put("rateDenominator", format.frameRate().denominator().longValueExact());
        values.put("coding", CodingKind.of(format.coding()).name());
        values.put("codingValues", CodingJson.write(format.coding()));
        values.put("frameOverhead", format.overheads().bytesPerFrame());
        values.put("containerOverhead", percent(format.overheads().container()));
        values.put("channels", format.audio().channels());
        values.put("sampleRate", format.audio().samplesPerSecond());
        values.put("audioBits", format.audio().bitsPerSample());
        return values;
    }

    private static FrameRate storable(FrameRate rate) {
        if (rate.numerator().bitLength() >= Long.SIZE || rate.denominator().bitLength() >= Long.SIZE) {
            throw new InvalidFormat("frameRate", "recording.invalid.frame-rate");
        }
        return rate;
    }

    private static BigDecimal percent(Fraction share) {
        Fraction percent = share.times(100);
        BigDecimal decimal = percent.toBigDecimal(PERCENT_DECIMALS, RoundingMode.DOWN);
        if (!Fraction.of(decimal).equals(percent)) {
            throw new InvalidFormat("containerOverhead", "format.invalid.container-decimals", PERCENT_DECIMALS);
        }
        return decimal;
    }
}
