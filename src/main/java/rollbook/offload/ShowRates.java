package rollbook.offload;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import rollbook.inventory.MediaItem;
import rollbook.production.Rendition;
import rollbook.quantity.DataRate;
import rollbook.turnaround.MeasuredRates;
import rollbook.turnaround.OffloadPart;
import rollbook.turnaround.OffloadPart.CardWay;
import rollbook.turnaround.OffloadPart.WrittenKind;
import rollbook.turnaround.PastSession;
import rollbook.turnaround.PastSession.Written;

/** How fast the offloads of a show really run. */
@Service
public class ShowRates {
    /** The latest ones: what was set up otherwise long ago teaches nothing about today. */
    private static final int SESSIONS = 500;

    private final JdbcClient jdbc;
    private final Clock clock;

    ShowRates(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** Cards of one model and capacity are equally fast. */
    public static CardWay way(MediaItem reader, @Nullable MediaItem adapter, MediaItem card) {
        return way(reader.code(), adapter == null ? null : adapter.code(), card.model(), card.capacityBytes());
    }

    /** Media of one model are equally fast; one without a model is only as fast as itself. */
    public static WrittenKind kind(MediaItem medium, Rendition rendition) {
        return kind(medium.code(), medium.model(), rendition);
    }

    /** What the inventory states of a way: the slowest of card, adapter and reader, as far as they are known. */
    public static Optional<DataRate> stated(MediaItem reader, @Nullable MediaItem adapter, MediaItem card) {
        return Stream.of(Optional.of(reader), Optional.ofNullable(adapter), Optional.of(card))
                .flatMap(Optional::stream)
                .map(MediaItem::readBytesPerSecond)
                .flatMap(Stream::ofNullable)
                .min(Long::compare)
                .map(DataRate::ofBytesPerSecond);
    }

    /** What the sessions so far tell. */
    public LearnedOffloads of(UUID productionId) {
        return of(productionId, Map.of());
    }

    /** @param furtherStated what the inventory states of parts that no session has used yet */
    public LearnedOffloads of(UUID productionId, Map<OffloadPart, DataRate> furtherStated) {
        Map<UUID, PastSession> sessions = new LinkedHashMap<>();
        Map<OffloadPart, DataRate> stated = new HashMap<>(furtherStated);
        jdbc.sql("""
                        select s.id, s.started_at, coalesce(s.ended_at, :now) as ended_at, coalesce(s.size_bytes, 0) as bytes,
                               reader.code as reader, adapter.code as adapter, card.model as card_model, card.capacity_bytes,
                               least(card.read_bytes_per_second, reader.read_bytes_per_second, adapter.read_bytes_per_second)
                                   as way_stated,
                               i.code, i.model, c.rendition, i.write_bytes_per_second as stated
                        from (select * from offload_session where production_id = :production
                              order by started_at desc, id limit :most) s
                        join offload_roll r on r.id = s.roll_id
                        join inventory_item card on card.id = r.card_id
                        join inventory_item reader on reader.id = s.reader_id
                        left join inventory_item adapter on adapter.id = s.adapter_id
                        join offload_destination o on o.session_id = s.id
                        join offload_copy c on c.id = o.copy_id
                        join inventory_item i on i.id = c.item_id
                        order by s.started_at, s.id, i.code, c.rendition
                        """)
                .param("production", productionId)
                .param("now", Timestamp.from(clock.instant()))
                .param("most", SESSIONS)
                .query(row -> {
                    take(row, sessions, stated);
                });
        return new LearnedOffloads(MeasuredRates.of(List.copyOf(sessions.values()), stated), sessions);
    }

    private static void take(ResultSet row, Map<UUID, PastSession> sessions, Map<OffloadPart, DataRate> stated)
            throws SQLException {
        CardWay way = way(
                row.getString("reader"),
                row.getString("adapter"),
                row.getString("card_model"),
                row.getLong("capacity_bytes"));
        WrittenKind kind =
                kind(row.getString("code"), row.getString("model"), Rendition.valueOf(row.getString("rendition")));
        keepSlowest(stated, way, row.getObject("way_stated", Long.class));
        keepSlowest(stated, kind, row.getObject("stated", Long.class));
        PastSession one = new PastSession(
                way,
                List.of(new Written(row.getString("code"), kind)),
                row.getLong("bytes"),
                row.getTimestamp("started_at").getTime(),
                row.getTimestamp("ended_at").getTime());
        sessions.merge(row.getObject("id", UUID.class), one, ShowRates::together);
    }

    private static void keepSlowest(
            Map<OffloadPart, DataRate> stated, OffloadPart part, @Nullable Long bytesPerSecond) {
        if (bytesPerSecond != null) {
            stated.merge(
                    part,
                    DataRate.ofBytesPerSecond(bytesPerSecond),
                    (one, other) -> one.compareTo(other) <= 0 ? one : other);
        }
    }

    private static PastSession together(PastSession one, PastSession other) {
        List<Written> written = new ArrayList<>(one.written());
        written.addAll(other.written());
        return new PastSession(one.way(), written, one.bytes(), one.startMillis(), one.endMillis());
    }

    private static CardWay way(String reader, @Nullable String adapter, String cardModel, @Nullable Long cardBytes) {
        return new CardWay(reader, adapter, cardModel + " " + cardBytes);
    }

    private static WrittenKind kind(String code, String model, Rendition rendition) {
        return new WrittenKind((model.isBlank() ? code : model) + " " + rendition);
    }
}
