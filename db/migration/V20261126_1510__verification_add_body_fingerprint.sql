-- What a document says of its files, without who wrote it, when and where: equal in two documents of one reading. Null
-- in those that were read before this column.
alter table verification_reading add column body_fingerprint bigint;
