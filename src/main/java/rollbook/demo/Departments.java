package rollbook.demo;

import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import rollbook.forecast.Forecasts;
import rollbook.inventory.Custody;
import rollbook.inventory.MediaItems;
import rollbook.mail.Mailings;
import rollbook.mail.Recipients;
import rollbook.offload.Offloads;
import rollbook.offload.Rolls;
import rollbook.scenario.OrderProposals;
import rollbook.scenario.ScenarioDrafts;
import rollbook.schedule.DayStates;
import rollbook.verification.Clearances;
import rollbook.verification.ManifestIntake;
import rollbook.verification.Overrides;

/** The services through which the crew does its work, the same that the pages call. */
@Component
@Profile("demo")
record Departments(
        DayStates days,
        Rolls rolls,
        Offloads offloads,
        ManifestIntake intake,
        Clearances clearances,
        Overrides overrides,
        MediaItems items,
        Custody custody,
        Shipping shipping,
        Forecasts forecasts,
        Purchasing purchasing,
        Arrivals arrivals,
        ScenarioDrafts scenarios,
        OrderProposals proposals,
        Recipients recipients,
        Mailings mailings) {}
