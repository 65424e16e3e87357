package rollbook.recording;

import java.util.List;
import rollbook.quantity.ByteCount;

/**
 * Frame sizes of VC-3 (SMPTE ST 2019-1), a coding whose frames all take the same bytes.
 *
 * <p>The sizes are those of tables C.1 and C.2 of the 2016 edition, taken from an open-source library that follows it
 * (FFmpeg, libavcodec/dnxhddata.c).
 */
public final class Vc3 {

    /** One line of the table of fixed rasters; {@code raster} is such as {@code 1080p 10-bit}. */
    public record FixedRaster(int compressionId, PictureSize size, String raster, ByteCount frame) {}

    /** One line of the table for any raster; the frame is that of 1920 × 1080, the basis of equation 7.1. */
    public record AnyRaster(int compressionId, String raster, ByteCount basisFrame) {}

    private static final PictureSize HD = new PictureSize(1920, 1080);
    private static final PictureSize HD_THIN = new PictureSize(1440, 1080);
    private static final PictureSize HD_720 = new PictureSize(1280, 720);

    public static final List<FixedRaster> FIXED_RASTERS = List.of(
            fixed(1235, HD, "1080p 10-bit", 917_504),
            fixed(1237, HD, "1080p 8-bit", 606_208),
            fixed(1238, HD, "1080p 8-bit", 917_504),
            fixed(1241, HD, "1080i 10-bit", 917_504),
            fixed(1242, HD, "1080i 8-bit", 606_208),
            fixed(1243, HD, "1080i 8-bit", 917_504),
            fixed(1244, HD_THIN, "1080i 8-bit", 606_208),
            fixed(1250, HD_720, "720p 10-bit", 458_752),
            fixed(1251, HD_720, "720p 8-bit", 458_752),
            fixed(1252, HD_720, "720p 8-bit", 303_104),
            fixed(1253, HD, "1080p 8-bit", 188_416),
            fixed(1256, HD, "1080p 4:4:4 10-bit", 1_835_008));

    public static final List<AnyRaster> ANY_RASTERS = List.of(
            any(1270, "4:4:4", 1_835_008),
            any(1271, "4:2:2 10-bit", 917_504),
            any(1272, "4:2:2 8-bit", 917_504),
            any(1273, "4:2:2 8-bit", 606_208),
            any(1274, "4:2:2 8-bit", 188_416));

    private static final int MACROBLOCK = 16;
    private static final long BASIS_MACROBLOCKS = 120L * 68;
    private static final long STEP = 4096;
    private static final long SMALLEST_FRAME = 8192;

    private Vc3() {}

    /**
     * ST 2019-1 equation 7.1: the basis frame grows with the number of macroblocks and is rounded, half up, to 4096 bytes.
     *
     * <pre>
     *   1274 at 3840 × 2160: 188,416 × (240 × 135) / (120 × 68) = 748,122.4, rounded to 183 × 4096 = 749,568
     * </pre>
     *
     * @throws IllegalArgumentException if the compression id is not one for any raster
     */
    public static ByteCount frame(int compressionId, PictureSize size) {
        long macroblocks = macroblocks(size.width()) * macroblocks(size.height());
        long scaled = basisFrame(compressionId).bytes() * macroblocks / BASIS_MACROBLOCKS;
        long rounded = (scaled + STEP / 2) / STEP * STEP;
        return ByteCount.of(Math.max(rounded, SMALLEST_FRAME));
    }

    private static ByteCount basisFrame(int compressionId) {
        return ANY_RASTERS.stream()
                .filter(line -> line.compressionId() == compressionId)
                .findFirst()
                .orElseThrow(
                        () -> new IllegalArgumentException("no VC-3 compression id for any raster: " + compressionId))
                .basisFrame();
    }

    private static long macroblocks(int samples) {
        return (samples + MACROBLOCK - 1) / MACROBLOCK;
    }

    private static FixedRaster fixed(int compressionId, PictureSize size, String raster, long frameBytes) {
        return new FixedRaster(compressionId, size, raster, ByteCount.of(frameBytes));
    }

    private static AnyRaster any(int compressionId, String raster, long basisFrameBytes) {
        return new AnyRaster(compressionId, raster, ByteCount.of(basisFrameBytes));
    }
}
