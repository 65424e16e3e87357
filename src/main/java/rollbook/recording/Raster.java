package rollbook.recording;

import java.util.List;

/** A picture size that presets are offered in. */
record Raster(String key, PictureSize size) {

    static final FrameRate FILM_RATE = FrameRate.of(24);

    private static final Raster HD = new Raster("hd", new PictureSize(1920, 1080));
    private static final Raster TWO_K = new Raster("2k", new PictureSize(2048, 1080));
    private static final Raster UHD = new Raster("uhd", new PictureSize(3840, 2160));
    private static final Raster FOUR_K = new Raster("4k", new PictureSize(4096, 2160));

    static final List<Raster> CINEMA = List.of(TWO_K, UHD, FOUR_K);

    static final List<Raster> VIDEO = List.of(HD, UHD);

    /** With the full-aperture sizes of a film scan. */
    static final List<Raster> SCAN = List.of(
            HD,
            TWO_K,
            new Raster("2k-full", new PictureSize(2048, 1556)),
            UHD,
            FOUR_K,
            new Raster("4k-full", new PictureSize(4096, 3112)));

    /** Common counts of photosites; no sensor in particular is meant. */
    static final List<Raster> MOSAIC = List.of(
            UHD, FOUR_K, new Raster("6k", new PictureSize(6144, 3456)), new Raster("8k", new PictureSize(8192, 4320)));
}
