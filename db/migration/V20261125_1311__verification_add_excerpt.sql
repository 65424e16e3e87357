-- The lines around the place where a document could not be understood, made fit to be shown when it was rejected.
alter table verification_reading
    add column excerpt            text[],
    add column excerpt_first_line bigint,
    add column excerpt_caret      int;
