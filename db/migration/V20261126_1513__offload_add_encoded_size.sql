-- Bytes of the roll as encoded, from the manifest of the encoder's output or of an encoded copy.
alter table offload_roll
    add column encoded_bytes bigint constraint offload_roll_encoded_bytes check (encoded_bytes > 0);
