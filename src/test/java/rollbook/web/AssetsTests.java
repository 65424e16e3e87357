package rollbook.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
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
        assertThat(assets).hasSize(10).allSatisfy(asset -> {
            assertThat(asset).matches(".*(-[0-9a-f]{32}\\.(css|js|svg)|/htmx\\.org/\\d+\\.\\d+\\.\\d+/.*)");
            assertThat(mvc.get().uri(asset).exchange()).as(asset).hasStatusOk();
        });
    }
}
