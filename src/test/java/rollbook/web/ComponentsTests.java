package rollbook.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.assertj.MockMvcTester;

@SiteTest
class ComponentsTests {
    @Autowired
    MockMvcTester mvc;

    @Test
    void x() throws Exception {
        java.nio.file.Files.createDirectories(java.nio.file.Path.of("target/look"));
        var r = mvc.get().uri("/p/TIDE/rolls").exchange();
        java.nio.file.Files.writeString(
                java.nio.file.Path.of("target/look/components.html"),
                r.getResponse().getContentAsString(java.nio.charset.StandardCharsets.UTF_8));
        assertThat(r).hasStatusOk();
        r = mvc.post()
                .uri("/p/TIDE/media")
                .param("code", " ")
                .param("capacityGb", "many")
                .param("secret", "short")
                .param("note", "whole")
                .param("unit", "")
                .param("state", "HELD")
                .exchange();
        java.nio.file.Files.writeString(
                java.nio.file.Path.of("target/look/wrong.html"),
                r.getResponse().getContentAsString(java.nio.charset.StandardCharsets.UTF_8));
        assertThat(r).hasStatus(422);
    }
}
