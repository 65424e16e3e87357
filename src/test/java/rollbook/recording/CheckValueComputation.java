package rollbook.recording;

import java.math.BigInteger;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import rollbook.quantity.ByteCount;
import rollbook.quantity.ByteUnit;
import rollbook.quantity.DataRate;
import rollbook.quantity.Fraction;
import rollbook.recording.OffloadRate.Link;
import rollbook.recording.OffloadRate.Place;

/** Sends a check value to the code that has to reproduce it; no figure is worked out here. */
final class CheckValueComputation {

    private final CheckValue value;
    private final CheckValueInputs in;

    private CheckValueComputation(CheckValue value) {
        this.value = value;
        this.in = value.inputs();
    }

    static Fraction result(CheckValue value) {
        return new CheckValueComputation(value).result();
    }

    private Fraction result() {
        return switch (value.kind()) {
            case "preset", "vc3", "fixed", "bit-rate", "bayer", "components" -> ofFormat(format());
            case "whole-frame" -> bitRate().wholeFrameBytes().exact();
            case "packing-share" -> packingShare();
            case "rate-difference" -> rateDifference();
            case "link-share" -> format().dataRate().ratioTo(in.bits("linkBitsPerSecond"));
            case "link-ratio" ->
                DataRate.ofBytesPerSecond(in.number("bytesPerSecond")).ratioTo(link());
            case "link" -> ofRate(link());
            case "rate" -> ofRate(rate());
            case "rate-sum" -> ofRate(in.bits("bitsPerSecond").plus(in.bits("plusBitsPerSecond")));
            case "pcm" -> ofFormat(RecordingFormat.sound("PCM", FrameRate.of(24), audio(in.number("channels"))));
            case "samples" -> audio(1, 24).samplesPerFrame(in.frameRate("rate")).times(in.number("frames"));
            case "frames" -> in.frameRate("rate").framesIn(Fraction.of(in.number("seconds")));
            case "timecode" -> Fraction.of(timecode());
            case "timecode-seconds" -> in.frameRate("rate").secondsFor(timecode());
            case "prefix" -> in.bytes("amount").in(in.unit("unit"));
            case "prefix-gain" -> in.unit("unit").in(in.unit("over")).minus(Fraction.ONE);
            case "tape" -> ofTape(in.tape("generation"));
            case "tape-ratio" -> tapeRatio();
            case "tape-gain" -> tapeRatio().minus(Fraction.ONE);
            case "array" ->
                ArrayLevel.valueOf(in.text("level"))
                        .usable(in.count("disks"), in.bytes("each"))
                        .in(ByteUnit.TB);
            case "whole-rolls" ->
                Fraction.of(MediaNeeded.forWholeRolls(
                        Collections.nCopies(in.count("rolls"), in.bytes("each")), in.bytes("capacity")));
            case "media-needed" ->
                Fraction.of(in.number("copies")
                        * MediaNeeded.forBytes(in.bytes("total"), in.bytes("capacity"), in.fraction("fill")));
            case "offload" -> offload();
            case "kept" -> in.bytes("bytes").times(in.fraction("share")).in(ByteUnit.TB);
            default -> throw new IllegalArgumentException("no computation of kind " + value.kind());
        };
    }

    private RecordingFormat format() {
        return switch (value.kind()) {
            case "preset", "rate-difference" -> preset().at(in.frameRate("rate"));
            case "vc3" -> vc3();
            case "fixed" -> picture(new PictureSize(1, 1), new Coding.FixedFrameBytes(in.number("frameBytes")));
            case "bit-rate" -> picture(in.size(), bitRate());
            case "bayer" -> picture(in.size(), new Coding.Bayer(in.count("bits"), in.packing()));
            case "components", "link-share" ->
                picture(
                        in.size(),
                        new Coding.Components(
                                Sampling.valueOf("S" + in.text("sampling")), in.count("bits"), in.packing()));
            default -> throw new IllegalArgumentException("no format in kind " + value.kind());
        };
    }

    /** The frame size that the source states must be the one that the preset carries. */
    private RecordingFormat preset() {
        RecordingFormat format = Presets.find(in.text("preset")).orElseThrow().format();
        if (in.has("frameBytes")) {
            requireSame(format.pictureBytesPerFrame(), in.number("frameBytes"));
        }
        return format;
    }

    private RecordingFormat vc3() {
        int id = in.count("id");
        if (in.has("basis")) {
            requireSame(Vc3.frame(id, new PictureSize(1920, 1080)).exact(), in.number("basis"));
        }
        return picture(
                in.size(), new Coding.FixedFrameBytes(Vc3.frame(id, in.size()).bytes()));
    }

    private RecordingFormat picture(PictureSize size, Coding coding) {
        return new RecordingFormat("check", size, in.frameRate("rate"), coding, Overheads.NONE, Audio.NONE);
    }

    private Fraction ofFormat(RecordingFormat format) {
        return switch (value.unit()) {
            case "B/frame" -> format.pictureBytesPerFrame();
            case "MB/frame" -> format.pictureBytesPerFrame().dividedBy(ByteUnit.MB.bytes());
            case "bit/px" -> format.bitsPerPhotosite();
            case "B/px" -> format.bitsPerPhotosite().dividedBy(8);
            case "min" -> format.minutesOn(in.bytes("capacity"));
            case "B", "GB" ->
                format.bytesFor(Duration.ofSeconds(in.number("seconds"))).in(ByteUnit.valueOf(value.unit()));
            default -> ofRate(format.dataRate());
        };
    }

    private Fraction ofRate(DataRate rate) {
        return switch (value.unit()) {
            case "Mb/s" -> rate.megabitsPerSecond();
            case "Gb/s" -> rate.bitsPerSecond().dividedBy(ByteUnit.GB.bytes());
            case "MB/s" -> rate.megabytesPerSecond();
            case "GB/s" -> rate.perSecond(ByteUnit.GB);
            case "MB/min" -> rate.perMinute(ByteUnit.MB);
            case "GB/min" -> rate.gigabytesPerMinute();
            case "GB/h" -> rate.gigabytesPerHour();
            case "TB/h" -> rate.perHour(ByteUnit.TB);
            case "GB" -> rate.bytesIn(Duration.ofSeconds(in.number("seconds"))).in(ByteUnit.GB);
            case "s" -> rate.secondsFor(in.bytes("capacity"));
            case "min" -> rate.secondsFor(in.bytes("capacity")).dividedBy(60);
            case "h" -> rate.secondsFor(in.bytes("capacity")).dividedBy(3600);
            default -> throw new IllegalArgumentException("no unit " + value.unit());
        };
    }

    private Fraction ofTape(TapeGeneration tape) {
        return switch (value.unit()) {
            case "TB" -> tape.printedCapacity().in(ByteUnit.TB);
            case "MB/s", "TB/h" -> ofRate(tape.printedRate());
            case "s" -> tape.secondsToFill();
            default -> throw new IllegalArgumentException("no unit " + value.unit());
        };
    }

    private Fraction tapeRatio() {
        TapeGeneration over = in.tape("over");
        return in.tape("of").nativeCapacity().ratioTo(over.nativeCapacity());
    }

    private Fraction packingShare() {
        int bits = in.count("bits");
        Fraction padded = new Coding.Bayer(bits, Packing.PADDED).frameBytes(in.size());
        return new Coding.Bayer(bits, Packing.PACKED).frameBytes(in.size()).dividedBy(padded);
    }

    private Fraction rateDifference() {
        Duration time = Duration.ofSeconds(in.number("seconds"));
        Fraction faster = format().dataRate().bytesIn(Fraction.seconds(time));
        Fraction slower = preset().at(in.frameRate("slower")).dataRate().bytesIn(Fraction.seconds(time));
        return faster.minus(slower).dividedBy(ByteUnit.MB.bytes());
    }

    private Fraction offload() {
        List<Link> links = new ArrayList<>();
        for (Place place : Place.values()) {
            String name = place.name().toLowerCase(Locale.ROOT);
            if (in.has(name)) {
                links.add(new Link(place, name, CheckValueInputs.perSecond(in.text(name))));
            }
        }
        if (in.has("link")) {
            links.add(new Link(Place.READER, "link", link()));
        }
        if (in.has("destinations")) {
            for (String rate : in.text("destinations").split("\\+")) {
                links.add(new Link(Place.DESTINATION, rate, CheckValueInputs.perSecond(rate)));
            }
        }
        OffloadRate copying = new OffloadRate(links);
        if (in.has("readBack")) {
            OffloadRate reading =
                    OffloadRate.of(new Link(Place.HOST, "read back", CheckValueInputs.perSecond(in.text("readBack"))));
            return copying.secondsWithReadBack(in.bytes("bytes"), reading);
        }
        return copying.secondsFor(in.bytes("bytes"));
    }

    private DataRate rate() {
        if (in.has("bitsPerSecond")) {
            return in.bits("bitsPerSecond");
        }
        if (in.has("bytesPerMinute")) {
            return DataRate.of(ByteCount.of(in.number("bytesPerMinute")), Duration.ofMinutes(1));
        }
        return DataRate.ofBytesPerSecond(in.number("bytesPerSecond"));
    }

    private Coding.TargetBitRate bitRate() {
        return new Coding.TargetBitRate(in.number("bitsPerSecond"), in.frameRate("reference"));
    }

    private Audio audio(long channels) {
        return audio(channels, in.count("bits"));
    }

    private Audio audio(long channels, int bits) {
        return new Audio((int) channels, in.count("hz"), bits);
    }

    private long timecode() {
        return Timecode.frameNumber(in.text("at"), in.count("count"));
    }

    private DataRate link() {
        return LinkCeiling.find(in.text("link")).orElseThrow().payload();
    }

    private static void requireSame(Fraction actual, long stated) {
        if (!actual.equals(Fraction.of(BigInteger.valueOf(stated)))) {
            throw new AssertionError("the code has " + actual + " bytes, the source " + stated);
        }
    }
}
