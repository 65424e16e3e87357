-- Slack that was kept in days becomes what it stood for: how late a delivery may be.
alter table forecast_supply add column slow_lead_time_working_days int;
update forecast_supply set slow_lead_time_working_days = lead_time_working_days + safety_working_days;
alter table forecast_supply alter column slow_lead_time_working_days set not null;
alter table forecast_supply drop column safety_working_days;
alter table forecast_supply
    add constraint forecast_supply_slow_check check (slow_lead_time_working_days >= lead_time_working_days),
    -- Pools that are supplied under the same name and conditions share a delivery; empty: nobody has said.
    add column supplier text not null default '',
    -- Two letters of ISO 3166-1, for the public holidays; null: the production's own working days and holidays.
    add column country text check (country ~ '^[A-Z]{2}$'),
    -- In the production's time zone: what is ordered later counts as ordered on the next working day.
    add column order_cut_off time not null default '16:00',
    add column delivery_minor_units bigint not null default 0 check (delivery_minor_units >= 0),
    add column delivered_to text not null default 'OFFICE' check (delivered_to in ('SET', 'OFFICE')),
    add column hire_week_minor_units bigint check (hire_week_minor_units >= 0),
    add column hire_minimum_weeks int check (hire_minimum_weeks > 0),
    add constraint forecast_supply_hire_check check ((hire_week_minor_units is null) = (hire_minimum_weeks is null));

-- What the forecast counts with for the whole production.
alter table forecast_fill_level rename to forecast_assumption;
alter table forecast_assumption rename column percent to fill_percent;
alter table forecast_assumption
    add column service_level_percent int not null default 95 check (service_level_percent between 50 and 99);
