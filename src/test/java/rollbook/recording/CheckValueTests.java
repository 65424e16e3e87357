package rollbook.recording;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import rollbook.quantity.Fraction;

class CheckValueTests {

    private static final int FEWEST = 150;

    @ParameterizedTest(name = "{argumentSetName}")
    @MethodSource("checkValues")
    void codeReproducesThePublishedFigure(CheckValue value) {
        Fraction result = CheckValueComputation.result(value);

        assertThat(result).as("%s in %s", value.quantity(), value.unit()).isEqualTo(value.expected());
        if (!value.published().isEmpty()) {
            assertThat(value.agreesWithPublished(result))
                    .as("%s %s, published %s %s", result, value.unit(), value.published(), value.publishedWithin())
                    .isTrue();
        }
        // A size or rate stated beside a figure and never read would make the line look more checked than it is.
        assertThat(value.inputs().allUsed())
                .as("every input of %s is used", value.inputs().values())
                .isTrue();
    }

    @Test
    void atLeastOneHundredAndFiftyDifferentFiguresAreChecked() {
        List<CheckValue> all = CheckValue.all();
        assertThat(all).hasSizeGreaterThanOrEqualTo(FEWEST);
        assertThat(all).extracting(CheckValue::id).doesNotHaveDuplicates();
        assertThat(all).allSatisfy(value -> {
            assertThat(value.source()).isNotBlank();
            assertThat(value.status()).isNotBlank();
        });
    }

    /** Shows that a wrong figure would be seen: each published one fails when the result is off by half or by double. */
    @Test
    void publishedFiguresRejectWrongResults() {
        assertThat(CheckValue.all())
                .filteredOn(value -> !value.published().isEmpty())
                .allSatisfy(value -> {
                    assertThat(value.agreesWithPublished(value.expected().dividedBy(2)))
                            .isFalse();
                    assertThat(value.agreesWithPublished(value.expected().times(2)))
                            .isFalse();
                });
    }

    static Stream<Arguments> checkValues() {
        return CheckValue.all().stream().map(value -> Arguments.argumentSet(value.displayName(), value));
    }
}
