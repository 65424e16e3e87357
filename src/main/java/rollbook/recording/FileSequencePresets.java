package rollbook.recording;

import java.util.ArrayList;
import java.util.List;

/** One file for each frame: DPX and OpenEXR, uncompressed. */
final class FileSequencePresets {

    /** Generic, film and television headers of ST 268 in full; from memory, unverified. Some writers stop at 1664 bytes. */
    private static final long DPX_HEADER_BYTES = 2048;

    /** An offset of 8 bytes in the line table, then 8 bytes before the pixels of each line. */
    private static final long EXR_BYTES_PER_LINE = 16;

    private FileSequencePresets() {}

    static List<Preset> all() {
        List<Preset> presets = new ArrayList<>();
        for (Raster raster : Raster.SCAN) {
            presets.add(dpx(10, raster));
            presets.add(dpx(16, raster));
        }
        for (Raster raster : Raster.CINEMA) {
            presets.add(halfFloatExr(raster));
        }
        return presets;
    }

    /** 10-bit RGB fills one 32-bit word a pixel (packing method A). */
    private static Preset dpx(int bits, Raster raster) {
        Coding coding = new Coding.Components(Sampling.S444, bits, Packing.PADDED);
        return preset(
                "dpx-" + bits + "-" + raster.key(),
                "SMPTE ST 268-1",
                "DPX RGB " + bits + "-bit",
                raster,
                coding,
                DPX_HEADER_BYTES);
    }

    /** Half floats of two bytes in single lines; the file header, under 1 kB as a rule, is not counted. */
    private static Preset halfFloatExr(Raster raster) {
        Coding coding = new Coding.Components(Sampling.S444, 16, Packing.PACKED);
        return preset(
                "exr-half-" + raster.key(),
                "OpenEXR file layout",
                "OpenEXR half RGB",
                raster,
                coding,
                EXR_BYTES_PER_LINE * raster.size().height());
    }

    private static Preset preset(
            String key, String standard, String name, Raster raster, Coding coding, long overheadBytes) {
        return new Preset(
                key,
                standard,
                new RecordingFormat(
                        name + ", " + raster.size().text(),
                        raster.size(),
                        Raster.FILM_RATE,
                        coding,
                        Overheads.ofFrame(overheadBytes),
                        Audio.NONE));
    }
}
