package rollbook.format;

import java.util.LinkedHashMap;
import java.util.Map;
import rollbook.quantity.Fraction;
import rollbook.recording.Coding;
import rollbook.recording.FrameRate;
import rollbook.recording.Packing;
import rollbook.recording.Sampling;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * A coding's values as a JSON object; its kind stands beside it. Fractions are texts such as {@code 24000/1001}, because
 * a JSON number would round them.
 */
final class CodingJson {
    private static final JsonMapper JSON = JsonMapper.shared();

    private CodingJson() {}

    static String write(Coding coding) {
        return JSON.writeValueAsString(values(coding));
    }

    /** @throws IllegalArgumentException if the values are not those of that kind */
    static Coding read(CodingKind kind, String json) {
        return coding(kind, JSON.readTree(json));
    }

    private static Map<String, Object> values(Coding coding) {
        Map<String, Object> values = new LinkedHashMap<>();
        if (coding instanceof Coding.Bayer bayer) {
            values.put("bitsPerPhotosite", bayer.bitsPerPhotosite());
            values.put("packing", bayer.packing());
        } else if (coding instanceof Coding.Components components) {
            values.put("sampling", components.sampling());
            values.put("bitsPerComponent", components.bitsPerComponent());
            values.put("packing", components.packing());
        } else if (coding instanceof Coding.FixedFrameBytes fixed) {
            values.put("bytesPerFrame", fixed.bytes());
        } else if (coding instanceof Coding.TargetBitRate target) {
            values.put("bitsPerSecond", target.bitsPerSecond());
            values.put("referenceFrameRate", target.reference().exactText());
        } else if (coding instanceof Coding.CompressionRatio compressed) {
            values.put("ratio", compressed.ratio().toString());
            values.putAll(values(compressed.uncompressed()));
        }
        return values;
    }

    private static Coding coding(CodingKind kind, JsonNode values) {
        return switch (kind) {
            case BAYER -> bayer(values);
            case COMPONENTS -> components(values);
            case FIXED_FRAME -> new Coding.FixedFrameBytes(wholeNumber(values, "bytesPerFrame"));
            case TARGET_BIT_RATE ->
                new Coding.TargetBitRate(
                        wholeNumber(values, "bitsPerSecond"), FrameRate.parse(text(values, "referenceFrameRate")));
            case COMPRESSED_BAYER -> new Coding.CompressionRatio(bayer(values), ratio(values));
            case COMPRESSED_COMPONENTS -> new Coding.CompressionRatio(components(values), ratio(values));
            case SOUND_ONLY -> new Coding.SoundOnly();
        };
    }

    private static Coding.Bayer bayer(JsonNode values) {
        return new Coding.Bayer(integer(values, "bitsPerPhotosite"), packing(values));
    }

    private static Coding.Components components(JsonNode values) {
        return new Coding.Components(
                Sampling.valueOf(text(values, "sampling")), integer(values, "bitsPerComponent"), packing(values));
    }

    private static Fraction ratio(JsonNode values) {
        return Fraction.parse(text(values, "ratio"));
    }

    private static Packing packing(JsonNode values) {
        return Packing.valueOf(text(values, "packing"));
    }

    private static int integer(JsonNode values, String name) {
        return Math.toIntExact(wholeNumber(values, name));
    }

    private static long wholeNumber(JsonNode values, String name) {
        JsonNode value = values.path(name);
        if (!value.isIntegralNumber() || !value.canConvertToLong()) {
            throw new IllegalArgumentException("coding without a whole number " + name);
        }
        return value.longValue();
    }

    private static String text(JsonNode values, String name) {
        JsonNode value = values.path(name);
        if (!value.isString()) {
            throw new IllegalArgumentException("coding without a text " + name);
        }
        return value.stringValue();
    }
}
