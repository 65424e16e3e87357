package rollbook.forecast;

import com.fasterxml.jackson.annotation.JsonAutoDetect;
import com.fasterxml.jackson.annotation.JsonFormat;
import java.math.BigDecimal;
import tools.jackson.databind.json.JsonMapper;

/**
 * How forecasts are kept: whole numbers as they are, money as text, dates in ISO form, and nothing that is derived from
 * the rest.
 */
final class ForecastJson {
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .changeDefaultVisibility(visibility -> visibility
                    .withGetterVisibility(JsonAutoDetect.Visibility.NONE)
                    .withIsGetterVisibility(JsonAutoDetect.Visibility.NONE)
                    .withFieldVisibility(JsonAutoDetect.Visibility.ANY))
            .withConfigOverride(
                    BigDecimal.class,
                    override -> override.setFormat(JsonFormat.Value.forShape(JsonFormat.Shape.STRING)))
            .build();

    private ForecastJson() {}

    static String write(Object value) {
        return MAPPER.writeValueAsString(value);
    }

    static <T> T read(String json, Class<T> type) {
        return MAPPER.readValue(json, type);
    }
}
