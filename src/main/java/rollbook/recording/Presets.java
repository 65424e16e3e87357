package rollbook.recording;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** The recording formats that need no data sheet, because an open standard fixes every byte. */
public final class Presets {

    private static final List<Preset> ALL = Stream.of(
                    CompressedPresets.all(), FileSequencePresets.all(), UncompressedPresets.all(), soundRolls())
            .flatMap(List::stream)
            .toList();

    private Presets() {}

    public static List<Preset> all() {
        return ALL;
    }

    public static Optional<Preset> find(String key) {
        return ALL.stream().filter(preset -> preset.key().equals(key)).findFirst();
    }

    /** Linear PCM tracks as they go beside a picture. */
    public static List<Audio> audio() {
        return Stream.of(1, 2, 4, 8, 16)
                .map(channels -> new Audio(channels, 48_000, 24))
                .toList();
    }

    private static List<Preset> soundRolls() {
        return audio().stream()
                .map(tracks -> new Preset(
                        "pcm-48-24-" + tracks.channels(),
                        "EBU Tech 3285",
                        RecordingFormat.sound("PCM 48 kHz 24-bit × " + tracks.channels(), FrameRate.of(24), tracks)))
                .toList();
    }
}
