package rollbook.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

class PagedTests {
    @Test
    void theLastPageKnowsThatItIsTheLast() {
        var page = new Paged<>(List.of("g", "h"), 3, 3, 8);
        assertThat(page.pages()).isEqualTo(3);
        assertThat(page.first()).isEqualTo(7);
        assertThat(page.last()).isEqualTo(8);
        assertThat(page.hasPrevious()).isTrue();
        assertThat(page.hasNext()).isFalse();
    }

    @Test
    void anEmptyListIsOnePage() {
        var page = new Paged<>(List.of(), 1, 50, 0);
        assertThat(page.pages()).isEqualTo(1);
        assertThat(page.first()).isZero();
        assertThat(page.hasNext()).isFalse();
    }

    @Test
    void offsetsCountFromTheFirstPageAndDoNotOverflow() {
        assertThat(Paged.offset(1, 50)).isZero();
        assertThat(Paged.offset(-4, 50)).isZero();
        assertThat(Paged.offset(Integer.MAX_VALUE, 50)).isEqualTo(107_374_182_300L);
        assertThatThrownBy(() -> new Paged<>(List.of(), 0, 50, 0)).isInstanceOf(IllegalArgumentException.class);
    }
}
