-- A verdict without a copy is about the roll's decoded files: the round trip that proves its encoding.
alter table verification_verdict alter column copy_id drop not null;
