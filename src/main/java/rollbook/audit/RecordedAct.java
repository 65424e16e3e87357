package rollbook.audit;

import java.time.Instant;

/** An act as it stands in the record. */
public record RecordedAct(
        long id, Instant at, String personName, String action, String subjectKind, String subjectCode, String detail) {}
