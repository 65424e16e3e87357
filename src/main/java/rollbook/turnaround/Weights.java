package rollbook.turnaround;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/** How long a recorded byte occupies each of a station’s shared parts: host bus and encoder, if any, and destinations. */
final class Weights {
    private final Station station;
    private final List<Part> parts = new ArrayList<>();
    private final int bus;
    private final int encoder;
    private final int firstDestination;
    private final double[] keptShares;
    private final double[] writeMillisPerByte;
    private final double[] readMillisPerByte;
    private final double busMillisPerByte;

    Weights(Station station) {
        this.station = station;
        bus = station.hostBus() == null ? -1 : add(Part.Kind.BUS, station.name());
        encoder = station.encoder() == null ? -1 : add(Part.Kind.ENCODER, station.name());
        firstDestination = parts.size();
        busMillisPerByte = station.hostBus() == null ? 0 : 1 / BytesPerMilli.of(station.hostBus());
        int count = station.destinations().size();
        keptShares = new double[count];
        writeMillisPerByte = new double[count];
        readMillisPerByte = new double[count];
        for (int i = 0; i < count; i++) {
            Destination destination = station.destinations().get(i);
            add(Part.Kind.DESTINATION, destination.name());
            keptShares[i] = destination.keptShare();
            writeMillisPerByte[i] = destination.keptShare() / BytesPerMilli.of(destination.write());
            readMillisPerByte[i] = destination.keptShare() / BytesPerMilli.of(destination.read());
        }
    }

    private int add(Part.Kind kind, String name) {
        parts.add(new Part(kind, name));
        return parts.size() - 1;
    }

    List<Part> parts() {
        return parts;
    }

    /** Of copying to the destinations of these numbers: the bus carries the bytes in and out. */
    double[] ofWriting(int from, int to, CameraShift camera) {
        double[] weights = new double[parts.size()];
        double carried = 1;
        boolean encoded = false;
        for (int i = from; i < to; i++) {
            weights[firstDestination + i] = writeMillisPerByte[i];
            carried += keptShares[i];
            encoded |= station.destinations().get(i).encoded();
        }
        if (bus >= 0) {
            weights[bus] = carried * busMillisPerByte;
        }
        if (encoded) {
            weights[encoder] = encoderMillisPerByte(camera);
        }
        return weights;
    }

    double[] ofReading(int destination) {
        double[] weights = new double[parts.size()];
        weights[firstDestination + destination] = readMillisPerByte[destination];
        if (bus >= 0) {
            weights[bus] = keptShares[destination] * busMillisPerByte;
        }
        return weights;
    }

    private double encoderMillisPerByte(CameraShift camera) {
        return 1 / Objects.requireNonNull(station.encoder()).recordedBytesPerMilli(camera);
    }
}
