package rollbook.format;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.context.event.ApplicationEvents;
import org.springframework.test.context.event.RecordApplicationEvents;
import rollbook.production.Role;
import rollbook.quantity.Fraction;
import rollbook.recording.Audio;
import rollbook.recording.Coding;
import rollbook.recording.FrameRate;
import rollbook.recording.InvalidFormat;
import rollbook.recording.Overheads;
import rollbook.recording.Packing;
import rollbook.recording.PictureSize;
import rollbook.recording.Preset;
import rollbook.recording.Presets;
import rollbook.recording.RecordingFormat;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.TestProduction;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

@PortalTest
@RecordApplicationEvents
class RecordingFormatsTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    RecordingFormats formats;

    TestProduction production;

    @BeforeEach
    void makeProduction() {
        production = fixtures.production();
    }

    @Test
    void everyPresetIsKeptExactly() {
        for (Preset preset : Presets.all()) {
            UUID id = formats.add(production.as(Role.OFFICE), preset.format());
            assertThat(formats.get(production.id, id).format()).as(preset.key()).isEqualTo(preset.format());
        }
        assertThat(formats.byId(production.id)).hasSameSizeAs(Presets.all());
    }

    @Test
    void soundOverheadsAndBrokenRatesAreKeptExactly() {
        RecordingFormat format = new RecordingFormat(
                "A camera",
                new PictureSize(4096, 2160),
                FrameRate.of(24_000, 1001),
                new Coding.CompressionRatio(new Coding.Bayer(12, Packing.PACKED), Fraction.of(31, 10)),
                new Overheads(8_192, Fraction.of(5, 1000)),
                new Audio(4, 48_000, 24));
        UUID id = formats.add(production.as(Role.WRANGLER), format);
        assertThat(formats.get(production.id, id).format()).isEqualTo(format);
    }

    @Test
    void whatTheTableWouldRoundIsRefused() {
        assertThatThrownBy(() -> formats.add(
                        production.as(Role.OFFICE),
                        new RecordingFormat(
                                "Thirds",
                                new PictureSize(2, 2),
                                FrameRate.of(24),
                                new Coding.FixedFrameBytes(1),
                                new Overheads(0, Fraction.of(1, 300)),
                                Audio.NONE)))
                .isInstanceOfSatisfying(
                        InvalidFormat.class, wrong -> assertThat(wrong.field()).isEqualTo("containerOverhead"));
        assertThatThrownBy(() -> formats.add(
                        production.as(Role.OFFICE),
                        fixed("Slow", 1).at(FrameRate.parse("0.0000000000000000000000001"))))
                .isInstanceOfSatisfying(
                        InvalidFormat.class, wrong -> assertThat(wrong.field()).isEqualTo("frameRate"));
        assertThat(formats.list(production.id)).isEmpty();
    }

    @Test
    void twoFormatsOfAProductionHaveTwoNames() {
        formats.add(production.as(Role.OFFICE), fixed("Wide", 1_000));
        UUID second = formats.add(production.as(Role.OFFICE), fixed("Close", 1_000));
        assertThatThrownBy(() -> formats.add(production.as(Role.OFFICE), fixed("WIDE", 2_000)))
                .isInstanceOfSatisfying(
                        InvalidFormat.class, wrong -> assertThat(wrong.field()).isEqualTo("name"));
        assertThatThrownBy(() -> formats.change(production.as(Role.OFFICE), second, fixed("wide", 2_000), 0))
                .isInstanceOf(InvalidFormat.class);
        formats.add(fixtures.production().as(Role.OFFICE), fixed("Wide", 1_000));
    }

    @Test
    void theSecondOfTwoChangesIsRefused() {
        UUID id = formats.add(production.as(Role.OFFICE), fixed("Wide", 1_000));
        formats.change(production.as(Role.OFFICE), id, fixed("Wide", 2_000), 0);
        assertThatThrownBy(() -> formats.change(production.as(Role.WRANGLER), id, fixed("Wide", 3_000), 0))
                .isInstanceOfSatisfying(
                        Refusal.class,
                        refusal -> assertThat(refusal.key()).isEqualTo("format.refused.changed-meanwhile"));
        assertThat(formats.get(production.id, id).format()).isEqualTo(fixed("Wide", 2_000));
    }

    @Test
    void everyChangeIsAnnouncedOnce(ApplicationEvents events) {
        UUID id = formats.add(production.as(Role.OFFICE), fixed("Wide", 1_000));
        formats.change(production.as(Role.OFFICE), id, fixed("Wide", 2_000), 0);
        formats.remove(production.as(Role.OFFICE), id);
        assertThat(events.stream(FormatChanged.class))
                .filteredOn(event -> event.productionId().equals(production.id))
                .hasSize(3);
    }

    @Test
    void aFormatInUseStays() {
        UUID id = production.format("Wide");
        UUID unit = production.unit("Main unit");
        UUID day = production.day(unit, 1, "PLANNED");
        production.plan(day, production.camera(unit, "A"), id, "60");
        assertThatThrownBy(() -> formats.remove(production.as(Role.OFFICE), id))
                .isInstanceOfSatisfying(
                        Refusal.class, refusal -> assertThat(refusal.key()).isEqualTo("format.refused.in-use"));
        UUID unused = production.format("Close");
        formats.remove(production.as(Role.OFFICE), unused);
        assertThat(formats.byId(production.id)).containsOnlyKeys(id);
    }

    @Test
    void anotherProductionsFormatIsUnknown() {
        UUID id = production.format("Wide");
        TestProduction other = fixtures.production();
        assertThatThrownBy(() -> formats.get(other.id, id)).isInstanceOf(NotFoundException.class);
        assertThatThrownBy(() -> formats.change(other.as(Role.OFFICE), id, fixed("Wide", 1), 0))
                .isInstanceOf(NotFoundException.class);
        assertThatThrownBy(() -> formats.remove(other.as(Role.OFFICE), id)).isInstanceOf(NotFoundException.class);
        assertThat(Optional.of(formats.get(production.id, id).format().bytesPerSecond()))
                .contains(Fraction.of(24_000_000));
    }

    private static RecordingFormat fixed(String name, long frameBytes) {
        return new RecordingFormat(
                name,
                new PictureSize(2048, 1080),
                FrameRate.of(24),
                new Coding.FixedFrameBytes(frameBytes),
                Overheads.NONE,
                Audio.NONE);
    }
}
