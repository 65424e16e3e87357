package rollbook.mail;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rollbook.production.Role;

class SubscriptionTests {
    @ParameterizedTest
    @CsvSource({
        "WRANGLER, DIGEST ALARM",
        "OFFICE, DIGEST ALARM WEEKLY",
        "POST, DIGEST ALARM",
        "READER, ''",
        "ADMINISTRATOR, DIGEST ALARM WEEKLY",
    })
    void whoHasChosenNothingIsToldWhatTheirWorkNeeds(Role role, String kinds) {
        assertThat(wanted(Subscription.usual(EnumSet.of(role)))).isEqualTo(kinds);
    }

    @Test
    void twoRolesAreToldWhatEitherIs() {
        assertThat(wanted(Subscription.usual(EnumSet.of(Role.READER, Role.OFFICE))))
                .isEqualTo("DIGEST ALARM WEEKLY");
    }

    @Test
    void endingOneKindEndsNoOther() {
        Subscription all = new Subscription(true, true, true, false, 1);
        assertThat(wanted(all.without(Kind.DIGEST))).isEqualTo("ALARM WEEKLY");
        assertThat(wanted(all.without(Kind.ALARM))).isEqualTo("DIGEST WEEKLY");
        assertThat(wanted(all.without(Kind.WEEKLY))).isEqualTo("DIGEST ALARM");
    }

    @Test
    void whoIsMutedWantsNothing() {
        assertThat(wanted(new Subscription(true, true, true, true, 1))).isEmpty();
    }

    private static String wanted(Subscription subscription) {
        return Arrays.stream(Kind.values())
                .filter(kind -> kind != Kind.CONFIRMATION && subscription.wants(kind))
                .map(Kind::name)
                .collect(Collectors.joining(" "));
    }
}
