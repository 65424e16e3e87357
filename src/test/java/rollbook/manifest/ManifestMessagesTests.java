package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.text.MessageFormat;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Properties;
import org.junit.jupiter.api.Test;

class ManifestMessagesTests {

    @Test
    void everyKeyHasATextAndEveryTextAKey() throws Exception {
        Properties texts = new Properties();
        texts.load(new StringReader(
                new String(Manifests.resource("/messages/manifest.properties"), StandardCharsets.UTF_8)));

        assertThat(texts.stringPropertyNames()).containsExactlyInAnyOrderElementsOf(keys());
        texts.forEach((key, text) -> {
            boolean counted = key.toString().matches("manifest\\.(bag|archive)\\..*");
            Object[] arguments = {counted ? (Object) 2L : "x", "y", "z"};
            assertThat(new MessageFormat(text.toString()).format(arguments))
                    .isNotBlank()
                    .doesNotContain("{");
        });
    }

    private static List<String> keys() {
        List<String> keys = new ArrayList<>();
        for (ManifestProblem problem : ManifestProblem.values()) {
            keys.add(problem.messageKey());
            keys.add(problem.adviceKey());
        }
        Arrays.stream(ManifestFormat.values()).map(ManifestFormat::messageKey).forEach(keys::add);
        Arrays.stream(ManifestRemark.Kind.values())
                .map(ManifestRemark.Kind::messageKey)
                .forEach(keys::add);
        Arrays.stream(MhlGeneration.State.values())
                .map(MhlGeneration.State::messageKey)
                .forEach(keys::add);
        Arrays.stream(HistoryProblem.Kind.values())
                .map(HistoryProblem.Kind::messageKey)
                .forEach(keys::add);
        Arrays.stream(DirectoryFinding.State.values())
                .map(DirectoryFinding.State::messageKey)
                .forEach(keys::add);
        Arrays.stream(ManifestHeader.Process.values())
                .map(value -> "manifest.process." + value)
                .forEach(keys::add);
        Arrays.stream(ManifestHeader.AlgorithmBasis.values())
                .map(value -> "manifest.basis." + value)
                .forEach(keys::add);
        Arrays.stream(FileFinding.Kind.values())
                .map(FileFinding.Kind::messageKey)
                .forEach(keys::add);
        Arrays.stream(Verdict.values()).map(Verdict::messageKey).forEach(keys::add);
        Arrays.stream(VerdictReason.values()).map(VerdictReason::messageKey).forEach(keys::add);
        Arrays.stream(RollWarning.Kind.values())
                .map(RollWarning.Kind::messageKey)
                .forEach(keys::add);
        Arrays.stream(BagFinding.values()).map(BagFinding::messageKey).forEach(keys::add);
        Arrays.stream(ArchiveMember.State.values())
                .map(ArchiveMember.State::messageKey)
                .forEach(keys::add);
        Arrays.stream(ArchiveFinding.Weight.values())
                .map(ArchiveFinding.Weight::messageKey)
                .forEach(keys::add);
        keys.add("manifest.archive.passed-over");
        return keys;
    }
}
