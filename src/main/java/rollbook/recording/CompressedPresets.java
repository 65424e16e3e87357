package rollbook.recording;

import java.util.ArrayList;
import java.util.List;
import rollbook.quantity.ByteCount;

/**
 * Codings with a fixed frame size. A standard's name often holds a rounder bit rate than it stores: a class 100 frame of
 * RP 2027 runs at 113.8 Mb/s, a 25 Mb/s frame of ST 314 with its sound and subcode at 28.8. The stored bytes count here.
 */
final class CompressedPresets {

    private static final PictureSize HD = new PictureSize(1920, 1080);
    private static final PictureSize HD_720 = new PictureSize(1280, 720);
    private static final PictureSize SD_525 = new PictureSize(720, 480);
    private static final PictureSize SD_625 = new PictureSize(720, 576);
    private static final FrameRate R25 = FrameRate.of(25);
    private static final FrameRate R50 = FrameRate.of(50);
    private static final FrameRate R29_97 = FrameRate.of(30_000, 1001);
    private static final FrameRate R59_94 = FrameRate.of(60_000, 1001);

    private CompressedPresets() {}

    static List<Preset> all() {
        List<Preset> presets = new ArrayList<>();
        presets.addAll(vc3());
        presets.addAll(vc3AnyRaster());
        presets.addAll(avcIntra());
        presets.addAll(d10());
        presets.addAll(dv());
        return presets;
    }

    private static List<Preset> vc3() {
        return Vc3.FIXED_RASTERS.stream()
                .map(line -> fixed(
                        "vc3-" + line.compressionId(),
                        "SMPTE ST 2019-1",
                        "VC-3 " + line.compressionId() + ", " + line.raster(),
                        line.size(),
                        R25,
                        line.frame()))
                .toList();
    }

    private static List<Preset> vc3AnyRaster() {
        List<Preset> presets = new ArrayList<>();
        for (Raster raster : Raster.CINEMA) {
            for (Vc3.AnyRaster line : Vc3.ANY_RASTERS) {
                presets.add(fixed(
                        "vc3-" + line.compressionId() + "-" + raster.key(),
                        "SMPTE ST 2019-1",
                        "VC-3 " + line.compressionId() + " " + line.raster() + ", "
                                + raster.size().text(),
                        raster.size(),
                        Raster.FILM_RATE,
                        Vc3.frame(line.compressionId(), raster.size())));
            }
        }
        return presets;
    }

    /** Source of the sizes: FFmpeg, libavformat/mxfenc.c, which writes them into files. */
    private static List<Preset> avcIntra() {
        return List.of(
                avcIntra("50-1080-25", "class 50, 1080 at 25", HD, R25, 281_088),
                avcIntra("50-720-59.94", "class 50, 720p at 59.94", HD_720, R59_94, 116_736),
                avcIntra("50-720-50", "class 50, 720p at 50", HD_720, R50, 140_800),
                avcIntra("100-1080-25", "class 100, 1080 at 25", HD, R25, 568_832));
    }

    private static Preset avcIntra(String key, String name, PictureSize size, FrameRate rate, long frameBytes) {
        return fixed("avc-intra-" + key, "SMPTE RP 2027", "AVC intra " + name, size, rate, ByteCount.of(frameBytes));
    }

    private static List<Preset> d10() {
        List<Preset> presets = new ArrayList<>();
        for (int megabits : List.of(30, 40, 50)) {
            presets.add(d10(megabits, SD_625, R25));
            presets.add(d10(megabits, SD_525, R29_97));
        }
        return presets;
    }

    private static Preset d10(int megabits, PictureSize size, FrameRate rate) {
        ByteCount frame = new Coding.TargetBitRate(megabits * 1_000_000L, rate).wholeFrameBytes();
        String name = "D-10 " + megabits + " Mb/s at " + rate.text();
        return fixed("d10-" + megabits + "-" + rate.text(), "SMPTE ST 356", name, size, rate, frame);
    }

    /** Sound and subcode are inside these frames. Source of the sizes: FFmpeg, libavcodec/dv_profile.c. */
    private static List<Preset> dv() {
        return List.of(
                dv("25-525", "SMPTE ST 314", SD_525, R29_97, 120_000),
                dv("25-625", "SMPTE ST 314", SD_625, R25, 144_000),
                dv("50-525", "SMPTE ST 314", SD_525, R29_97, 240_000),
                dv("50-625", "SMPTE ST 314", SD_625, R25, 288_000),
                dv("100-1080i50", "SMPTE ST 370", HD, R25, 576_000),
                dv("100-720p60", "SMPTE ST 370", HD_720, R59_94, 240_000));
    }

    private static Preset dv(String key, String standard, PictureSize size, FrameRate rate, long frameBytes) {
        String name = "DV-based " + key.replace("-", " Mb/s, ");
        return fixed("dv-" + key, standard, name, size, rate, ByteCount.of(frameBytes));
    }

    private static Preset fixed(
            String key, String standard, String name, PictureSize size, FrameRate rate, ByteCount frame) {
        Coding coding = new Coding.FixedFrameBytes(frame.bytes());
        return new Preset(key, standard, new RecordingFormat(name, size, rate, coding, Overheads.NONE, Audio.NONE));
    }
}
