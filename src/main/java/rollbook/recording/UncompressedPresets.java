package rollbook.recording;

import java.util.ArrayList;
import java.util.List;

/** Bare samples: colour mosaics as in DNG, and component video in the packings of ST 2110-20. */
final class UncompressedPresets {

    private UncompressedPresets() {}

    static List<Preset> all() {
        List<Preset> presets = new ArrayList<>();
        for (Raster raster : Raster.MOSAIC) {
            for (int bits : List.of(10, 12, 14, 16)) {
                presets.add(bayer(bits, raster));
            }
        }
        for (Raster raster : Raster.VIDEO) {
            for (Sampling sampling : List.of(Sampling.S420, Sampling.S422, Sampling.S444)) {
                for (int bits : List.of(8, 10, 12)) {
                    presets.add(components(sampling, bits, raster));
                }
            }
        }
        return presets;
    }

    /** Headers and previews are not counted: they differ from writer to writer and belong in the overhead per frame. */
    private static Preset bayer(int bits, Raster raster) {
        return preset(
                "bayer-" + bits + "-" + raster.key(),
                "DNG 1.6",
                "Bayer " + bits + "-bit, " + raster.size().text(),
                raster,
                new Coding.Bayer(bits, Packing.PACKED));
    }

    private static Preset components(Sampling sampling, int bits, Raster raster) {
        return preset(
                "st2110-" + sampling.text().replace(":", "") + "-" + bits + "-" + raster.key(),
                "SMPTE ST 2110-20",
                "Uncompressed " + sampling.text() + " " + bits + "-bit, "
                        + raster.size().text(),
                raster,
                new Coding.Components(sampling, bits, Packing.PACKED));
    }

    private static Preset preset(String key, String standard, String name, Raster raster, Coding coding) {
        return new Preset(
                key,
                standard,
                new RecordingFormat(name, raster.size(), Raster.FILM_RATE, coding, Overheads.NONE, Audio.NONE));
    }
}
