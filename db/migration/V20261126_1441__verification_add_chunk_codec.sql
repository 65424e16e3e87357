-- How a chunk is packed: 0 one zstd frame, 1 the digests apart from the text. Those that are here are zstd frames.
alter table verification_document_chunk add column codec smallint not null default 0 check (codec in (0, 1));
