package rollbook.format;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.production.Membership;
import rollbook.recording.InvalidFormat;
import rollbook.recording.RecordingFormat;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** The recording formats of a production. */
@Service
public class RecordingFormats {
    private static final String FORMATS =
            "select " + FormatRows.COLUMNS + " from format_recording_format f where f.production_id = :production";

    private final JdbcClient jdbc;
    private final AuditTrail trail;
    private final ApplicationEventPublisher events;

    RecordingFormats(JdbcClient jdbc, AuditTrail trail, ApplicationEventPublisher events) {
        this.jdbc = jdbc;
        this.trail = trail;
        this.events = events;
    }

    /** All formats, ordered by name. */
    public List<NamedFormat> list(UUID productionId) {
        return jdbc.sql(FORMATS + " order by lower(f.name)")
                .param("production", productionId)
                .query(FormatRows::read)
                .list();
    }

    /** All formats by their ids, in the order of their names. */
    public Map<UUID, NamedFormat> byId(UUID productionId) {
        Map<UUID, NamedFormat> formats = new LinkedHashMap<>();
        list(productionId).forEach(format -> formats.put(format.id(), format));
        return formats;
    }

    /** @throws NotFoundException if this production has no such format */
    public NamedFormat get(UUID productionId, UUID id) {
        return versioned(productionId, id).named();
    }

    Versioned versioned(UUID productionId, UUID id) {
        return jdbc.sql(FORMATS + " and f.id = :id")
                .param("production", productionId)
                .param("id", id)
                .query((row, number) -> new Versioned(FormatRows.read(row, number), row.getInt("version")))
                .optional()
                .orElseThrow(NotFoundException::new);
    }

    /**
     * Adds a format under its own name.
     *
     * @throws InvalidFormat if another format has that name, or a value is too fine to be kept
     */
    @Transactional
    public UUID add(Membership by, RecordingFormat format) {
        UUID id = UUID.randomUUID();
        int added = jdbc.sql("""
                        insert into format_recording_format (id, production_id, name, width_photosites, height_photosites,
                            frame_rate_numerator, frame_rate_denominator, coding, coding_values, frame_overhead_bytes,
                            container_overhead_percent, audio_channels, audio_sample_rate_hz, audio_bits)
                        values (:id, :production, :name, :width, :height, :rateNumerator, :rateDenominator, :coding,
                            cast(:codingValues as jsonb), :frameOverhead, :containerOverhead, :channels, :sampleRate, :audioBits)
                        on conflict do nothing
                        """)
                .params(FormatRows.values(format))
                .param("id", id)
                .param("production", by.productionId())
                .update();
        if (added == 0) {
            throw nameTaken(format);
        }
        changed(by, "format.added", format);
        return id;
    }

    /**
     * Changes a format; what was planned in it is planned in the new figures from then on.
     *
     * @throws InvalidFormat if another format has that name, or a value is too fine to be kept
     * @throws Refusal if somebody else changed it meanwhile
     */
    @Transactional
    public void change(Membership by, UUID id, RecordingFormat format, int version) {
        get(by.productionId(), id);
        try {
            int updated = jdbc.sql("""
                            update format_recording_format set name = :name, width_photosites = :width,
                                height_photosites = :height, frame_rate_numerator = :rateNumerator,
                                frame_rate_denominator = :rateDenominator, coding = :coding,
                                coding_values = cast(:codingValues as jsonb), frame_overhead_bytes = :frameOverhead,
                                container_overhead_percent = :containerOverhead, audio_channels = :channels,
                                audio_sample_rate_hz = :sampleRate, audio_bits = :audioBits, version = version + 1
                            where production_id = :production and id = :id and version = :version
                            """)
                    .params(FormatRows.values(format))
                    .param("production", by.productionId())
                    .param("id", id)
                    .param("version", version)
                    .update();
            if (updated == 0) {
                throw new Refusal("format.refused.changed-meanwhile", format.name());
            }
        } catch (DuplicateKeyException e) {
            throw nameTaken(format);
        }
        changed(by, "format.changed", format);
    }

    /** @throws Refusal if a day is planned or a roll was shot in it */
    @Transactional
    public void remove(Membership by, UUID id) {
        NamedFormat format = get(by.productionId(), id);
        try {
            jdbc.sql("delete from format_recording_format where production_id = ? and id = ?")
                    .params(by.productionId(), id)
                    .update();
        } catch (DataIntegrityViolationException e) {
            throw new Refusal("format.refused.in-use", format.name());
        }
        changed(by, "format.removed", format.format());
    }

    private void changed(Membership by, String action, RecordingFormat format) {
        trail.add(
                by.act(action, "format", format.name(), format.bytesPerSecond().ceiling() + " bytes per second"));
        events.publishEvent(new FormatChanged(by.productionId()));
    }

    private static InvalidFormat nameTaken(RecordingFormat format) {
        return new InvalidFormat("name", "format.invalid.name-taken", format.name());
    }

    record Versioned(NamedFormat named, int version) {}
}
