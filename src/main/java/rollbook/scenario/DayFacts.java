package rollbook.scenario;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.inventory.CardState;

/**
 * What the production knows of a day: kept with a scenario, so that it says the same tomorrow.
 *
 * @param dayId of the shooting day that the scenario is about; other units' days of its date take part
 * @param dayNumber of that day
 * @param tonight how far the day has come, or null if it hasn't begun
 */
record DayFacts(
        UUID dayId,
        int dayNumber,
        String unitName,
        LocalDate date,
        List<Camera> cameras,
        List<CardType> cards,
        List<Reader> readers,
        List<Adapter> adapters,
        List<Destination> destinations,
        List<MeasuredWay> measuredWays,
        @Nullable Tonight tonight) {

    DayFacts {
        cameras = List.copyOf(cameras);
        cards = List.copyOf(cards);
        readers = List.copyOf(readers);
        adapters = List.copyOf(adapters);
        destinations = List.copyOf(destinations);
        measuredWays = List.copyOf(measuredWays);
    }

    /**
     * A camera with what it is to record. Of several formats the bytes per second are the mean over the minutes.
     *
     * @param minutes planned minutes; of a day that is being shot, those that are left
     * @param formats names of the formats, joined
     * @param usualCards the type of the card it last recorded on, or null
     */
    record Camera(
            String letter,
            String unitName,
            String minutes,
            long bytesPerSecond,
            double framesPerSecond,
            String formats,
            @Nullable String usualCards) {}

    /**
     * Good cards that are alike.
     *
     * @param count how many can be counted on: all, or on a day that is being shot those that are blank now
     * @param hireWeekMinorUnits what one costs a week if they are hired, or null
     */
    record CardType(
            String key,
            String model,
            long capacityBytes,
            @Nullable Long readBytesPerSecond,
            int count,
            @Nullable Long hireWeekMinorUnits) {}

    /** @param hireWeekMinorUnits what it costs a week if it is hired, or null */
    record Reader(
            String code,
            @Nullable Long readBytesPerSecond,
            @Nullable Long hireWeekMinorUnits) {}

    /** @param hireWeekMinorUnits what it costs a week if it is hired, or null */
    record Adapter(
            String code,
            @Nullable Long readBytesPerSecond,
            @Nullable Long hireWeekMinorUnits) {}

    /**
     * A leg of the copy plan with the medium that it writes to now.
     *
     * @param itemCode of the medium written last, or likely next; null if the leg has none
     * @param onSet whether it is written on set, while cards wait for it
     * @param writeBytesPerSecond as the show's sessions ran, else as the media list states it
     * @param sessions that its writing speed rests on; 0 if it is only stated
     * @param priceMinorUnits what the medium cost if it was bought, or null
     */
    record Destination(
            String leg,
            @Nullable String itemCode,
            boolean onSet,
            boolean encoded,
            int keptPercent,
            @Nullable Long writeBytesPerSecond,
            int sessions,
            @Nullable Long readBytesPerSecond,
            @Nullable Long priceMinorUnits) {
        /** The medium’s code, or the leg’s name while it has none. */
        String medium() {
            return itemCode == null ? leg : itemCode;
        }
    }

    /**
     * How fast the show's own sessions read a kind of card on a way.
     *
     * @param adapter its code, or null for none
     * @param cardType the key of the kind of card
     * @param sessions that it rests on
     */
    record MeasuredWay(String reader, @Nullable String adapter, String cardType, long bytesPerSecond, int sessions) {}

    /**
     * A day that is being shot, as far as it has come.
     *
     * @param now the time of day, 15:04, from which it is played on
     * @param rolls recorded so far
     * @param cards how many are in each state, in the order of a card's way; only blank ones are counted on
     */
    record Tonight(String now, int rolls, List<InState> cards) {}

    record InState(CardState state, int cards) {}
}
