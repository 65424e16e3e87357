-- A copy ends when its medium is erased, and begins anew when it is written again.
alter table offload_copy add column erased_at timestamptz;
