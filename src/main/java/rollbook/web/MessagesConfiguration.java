package rollbook.web;

import java.io.IOException;
import java.util.Arrays;
import java.util.Objects;
import org.springframework.context.MessageSource;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.support.ReloadableResourceBundleMessageSource;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;

/** Reads every file of {@code messages/}, so that a module's texts are known by lying there. */
@Configuration(proxyBeanMethods = false)
class MessagesConfiguration {
    @Bean
    MessageSource messageSource() throws IOException {
        Resource[] files = new PathMatchingResourcePatternResolver().getResources("classpath*:messages/*.properties");
        var messages = new ReloadableResourceBundleMessageSource();
        messages.setBasenames(Arrays.stream(files)
                .map(file -> Objects.requireNonNull(file.getFilename()).replaceFirst("\\.properties$", ""))
                .distinct()
                .sorted()
                .map(name -> "classpath:messages/" + name)
                .toArray(String[]::new));
        messages.setDefaultEncoding("UTF-8");
        messages.setFallbackToSystemLocale(false);
        messages.setUseCodeAsDefaultMessage(false);
        // One rule for apostrophes and braces, with arguments or without.
        messages.setAlwaysUseMessageFormat(true);
        return messages;
    }
}
