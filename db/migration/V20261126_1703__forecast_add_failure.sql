-- A forecast that fails is told on the page: since when, why, and when it is tried again.
alter table forecast_state
    add column failing_since timestamptz,
    add column failure text,
    add column next_try_at timestamptz,
    add constraint forecast_state_failure_check
        check ((failing_since is null) = (failure is null) and (failing_since is null) = (next_try_at is null));
