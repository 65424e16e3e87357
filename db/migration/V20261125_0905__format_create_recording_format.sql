-- A recording format: all that fixes bytes per second. Frame rates are exact fractions.
create table format_recording_format (
    id                      uuid           not null primary key,
    production_id           uuid           not null references production_production (id),
    name                    text           not null,
    width_photosites        int            not null check (width_photosites > 0),
    height_photosites       int            not null check (height_photosites > 0),
    frame_rate_numerator    bigint         not null check (frame_rate_numerator > 0),
    frame_rate_denominator  bigint         not null check (frame_rate_denominator > 0),
    coding                  text           not null,
    coding_values           jsonb          not null,
    frame_overhead_bytes    bigint         not null default 0 check (frame_overhead_bytes >= 0),
    container_overhead_percent numeric(6, 3) not null default 0 check (container_overhead_percent >= 0),
    audio_channels          int            not null default 0 check (audio_channels >= 0),
    audio_sample_rate_hz    int            not null default 48000 check (audio_sample_rate_hz > 0),
    audio_bits              int            not null default 24 check (audio_bits > 0),
    version                 int            not null default 0
);
create unique index format_recording_format_name_key on format_recording_format (production_id, lower(name));
