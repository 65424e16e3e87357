package rollbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.MessageFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every text that a page or a class names is there, and none is there for nothing. */
class MessagesTests {
    private static final Path MESSAGES = Path.of("src/main/resources/messages");
    private static final Path TEMPLATES = Path.of("src/main/resources/templates");
    private static final Path JAVA = Path.of("src/main/java");

    private static final String NAME = "[a-zA-Z][\\w-]*(?:\\.[\\w-]+)*";
    private static final Pattern IN_TEMPLATE = Pattern.compile("#\\{(" + NAME + ")[(}]");
    private static final Pattern BUILT_IN_TEMPLATE = Pattern.compile("#\\{\\|(" + NAME + ")\\.\\$\\{");
    private static final Pattern SPOKEN_BY_JAVA = Pattern.compile(
            "(?:new Refusal|Notice\\.of|(?<![\\w.])text|[dD]isplay\\.text)\\(\\s*\"(" + NAME + ")\"\\s*[,)]");
    private static final Pattern KEY = Pattern.compile("(?m)^([a-zA-Z][\\w.-]*)=");
    private static final Pattern QUOTED = Pattern.compile("[\"'{](" + NAME + ")\\.?[\"'}]");
    /** Keys that Spring and Bean Validation make up themselves. */
    private static final Set<String> OF_THE_FRAMEWORK = Set.of(
            "typeMismatch",
            "required",
            "NotBlank",
            "NotEmpty",
            "NotNull",
            "Size",
            "Min",
            "Max",
            "DecimalMin",
            "DecimalMax",
            "Positive",
            "PositiveOrZero",
            "Negative",
            "NegativeOrZero",
            "Pattern",
            "Email",
            "Digits",
            "Past",
            "PastOrPresent",
            "Future",
            "FutureOrPresent",
            "AssertTrue",
            "AssertFalse");

    private final TreeMap<String, String> messages = new TreeMap<>();
    private final List<String> misplaced = new ArrayList<>();

    MessagesTests() throws IOException {
        for (Path file : files(MESSAGES, ".properties")) {
            String module = file.getFileName().toString().replace(".properties", "");
            Set<String> inFile = new TreeSet<>();
            KEY.matcher(Files.readString(file))
                    .results()
                    .map(key -> key.group(1))
                    .forEach(key -> {
                        if (!inFile.add(key)) {
                            misplaced.add(key + " twice in " + file.getFileName());
                        }
                    });
            var properties = new Properties();
            try (Reader reader = Files.newBufferedReader(file)) {
                properties.load(reader);
            }
            for (String key : properties.stringPropertyNames()) {
                if (!isOfTheFramework(key) && !key.startsWith(module + ".")) {
                    misplaced.add(key + " in " + file.getFileName());
                }
                if (messages.put(key, properties.getProperty(key)) != null) {
                    misplaced.add(key + " twice");
                }
            }
        }
    }

    @Test
    void everyTextThatATemplateNamesIsThere() throws IOException {
        Set<String> named = found(IN_TEMPLATE, files(TEMPLATES, ".html"));
        assertThat(named).as("the search finds keys").contains("web.name", "web.signed-in");
        assertThat(messages.keySet()).containsAll(named);
    }

    @Test
    void everyTextThatAClassSpeaksIsThere() throws IOException {
        Set<String> named = found(SPOKEN_BY_JAVA, files(JAVA, ".java"));
        assertThat(named).as("the search finds keys").contains("web.display.now");
        assertThat(messages.keySet()).containsAll(named);
    }

    @Test
    void noTextIsThereForNothing() throws IOException {
        Set<String> named = found(IN_TEMPLATE, files(TEMPLATES, ".html"));
        named.addAll(found(QUOTED, files(TEMPLATES, ".html")));
        Set<String> quoted = found(QUOTED, files(JAVA, ".java"));
        named.addAll(quoted);
        quoted.forEach(action -> named.add("audit.action." + action));
        Set<String> beginnings = new TreeSet<>(found(BUILT_IN_TEMPLATE, files(TEMPLATES, ".html")));
        // A quoted name may begin keys that are completed at run time: by an enum's constant, by ".next".
        named.stream().filter(name -> name.contains(".")).forEach(beginnings::add);
        assertThat(messages.keySet().stream()
                        .filter(key -> !isOfTheFramework(key))
                        .filter(key -> !named.contains(key))
                        .filter(key -> beginnings.stream().noneMatch(beginning -> key.startsWith(beginning + "."))))
                .isEmpty();
    }

    @Test
    void everyKeyLiesOnceInTheFileOfItsModule() {
        assertThat(misplaced).isEmpty();
    }

    @Test
    void everyTextIsASoundMessageFormat() {
        messages.forEach((key, text) -> {
            assertThat(new MessageFormat(text, Locale.UK)).as(key).isNotNull();
            assertThat(text.replace("''", ""))
                    .as("%s: an apostrophe is ’ or doubled", key)
                    .doesNotContain("'");
            assertThat(text).as(key).isNotBlank().isEqualTo(text.strip());
        });
    }

    private static boolean isOfTheFramework(String key) {
        return OF_THE_FRAMEWORK.contains(key.split("\\.")[0]);
    }

    private static Set<String> found(Pattern pattern, List<Path> files) {
        return files.stream()
                .flatMap(file -> pattern.matcher(read(file)).results())
                .map(match -> match.group(1))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static List<Path> files(Path root, String ending) throws IOException {
        try (Stream<Path> all = Files.walk(root)) {
            return all.filter(file -> file.toString().endsWith(ending)).sorted().toList();
        }
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
