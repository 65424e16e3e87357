-- A document may also describe what an encoder put out, and the files that were decoded from it.
alter table verification_document
    drop constraint verification_document_said_subject_check,
    add constraint verification_document_said_subject_check
        check (said_subject in ('CARD', 'COPY', 'ENCODED_OUTPUT', 'DECODED'));
alter table verification_delivery
    drop constraint verification_delivery_said_subject_check,
    add constraint verification_delivery_said_subject_check
        check (said_subject in ('CARD', 'COPY', 'ENCODED_OUTPUT', 'DECODED'));
alter table verification_assignment
    drop constraint verification_assignment_subject_check,
    add constraint verification_assignment_subject_check
        check (subject in ('CARD', 'COPY', 'ENCODED_OUTPUT', 'DECODED', 'NOT_A_ROLL')),
    drop constraint verification_assignment_subject,
    add constraint verification_assignment_subject check (
        (subject = 'NOT_A_ROLL' and roll_id is null and copy_id is null)
        or (subject in ('CARD', 'ENCODED_OUTPUT', 'DECODED') and roll_id is not null and copy_id is null)
        or (subject = 'COPY' and roll_id is not null and copy_id is not null));
