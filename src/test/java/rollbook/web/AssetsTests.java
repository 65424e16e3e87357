package rollbook.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.setup.MockMvcBuilders;
import org.springframework.web.context.WebApplicationContext;
import org.springframework.web.servlet.resource.ResourceUrlEncodingFilter;

@SiteTest
class AssetsTests {
    private static final Path TOKENS = Path.of("src/main/resources/static/css/tokens.css");

    private MockMvcTester mvc = MockMvcTester.of(List.of());

    @BeforeEach
    void withAddressesThatCarryVersions(@Autowired WebApplicationContext site) {
        mvc = MockMvcTester.create(MockMvcBuilders.webAppContextSetup(site)
                .addFilters(new ResourceUrlEncodingFilter())
                .build());
    }

    @Test
    void everyAssetOfAPageIsThereUnderAnAddressThatChangesWithIt() throws IOException {
        Document page = Jsoup.parse(
                mvc.get().uri("/p/TIDE/rolls").exchange().getResponse().getContentAsString());
        List<String> assets = page.select("head link[href]").eachAttr("href");
        assets.addAll(page.select("script").eachAttr("src"));
        assertThat(assets).hasSize(8).allSatisfy(asset -> {
            assertThat(asset).matches(".*(-[0-9a-f]{32}\\.(css|js|svg)|/htmx\\.org/\\d+\\.\\d+\\.\\d+/.*)");
            assertThat(mvc.get().uri(asset).exchange()).as(asset).hasStatusOk();
        });
    }

    // WCAG 2.2, success criterion 1.4.3: text 4.5:1; 1.4.11: what is drawn 3:1.
    @Test
    void textStandsOutFromItsGround() throws IOException {
        for (var colours : schemes()) {
            for (String text : List.of("ink", "quiet", "accent", "alarm")) {
                assertThat(contrast(colours, text, "paper")).as(text).isGreaterThan(4.5);
            }
            assertThat(contrast(colours, "ink", "leaf")).isGreaterThan(4.5);
            assertThat(contrast(colours, "on-accent", "accent")).isGreaterThan(4.5);
            assertThat(contrast(colours, "proven", "paper")).isGreaterThan(3);
            assertThat(contrast(colours, "failed", "paper")).isGreaterThan(3);
            assertThat(contrast(colours, "unknown", "paper")).isGreaterThan(3);
        }
    }

    private static List<Map<String, String>> schemes() throws IOException {
        String[] parts = Files.readString(TOKENS).split("prefers-color-scheme");
        assertThat(parts).hasSize(2);
        return List.of(colours(parts[0]), colours(parts[1]));
    }

    private static Map<String, String> colours(String css) {
        var colours = new HashMap<String, String>();
        Pattern.compile("--([\\w-]+): #([0-9a-f]{6});")
                .matcher(css)
                .results()
                .forEach(match -> colours.put(match.group(1), match.group(2)));
        return colours;
    }

    /** The contrast ratio as WCAG 2.2 defines it: (lighter + 0.05) / (darker + 0.05). */
    private static double contrast(Map<String, String> colours, String one, String other) {
        double a = luminance(colours.get(one));
        double b = luminance(colours.get(other));
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    private static double luminance(String colour) {
        int rgb = Integer.parseInt(colour, 16);
        return 0.2126 * linear(rgb >> 16) + 0.7152 * linear(rgb >> 8 & 0xff) + 0.0722 * linear(rgb & 0xff);
    }

    private static double linear(int channel) {
        double value = channel / 255.0;
        return value <= 0.04045 ? value / 12.92 : Math.pow((value + 0.055) / 1.055, 2.4);
    }
}
