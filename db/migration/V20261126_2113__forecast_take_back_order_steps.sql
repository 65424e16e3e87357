-- What was recorded of an order by mistake is taken back by a step of its own; a step is taken back once.
alter table forecast_order_step
    drop constraint forecast_order_step_step_check,
    add column taken_back_step int,
    add constraint forecast_order_step_step_check check (step in ('CAME', 'CANCELLED', 'TAKEN_BACK')),
    add constraint forecast_order_step_taken_back_check check ((step = 'TAKEN_BACK') = (taken_back_step is not null)),
    add constraint forecast_order_step_taken_back_uq unique (order_id, taken_back_step),
    add constraint forecast_order_step_taken_back_fk foreign key (order_id, taken_back_step)
        references forecast_order_step (order_id, number) on delete cascade;
