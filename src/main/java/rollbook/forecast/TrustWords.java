package rollbook.forecast;

import java.util.List;
import org.springframework.stereotype.Component;
import rollbook.web.Display;

/** How earlier forecasts did, in words. */
@Component
class TrustWords {
    private static final double PER_CENT = 100;

    private final Display display;

    TrustWords(Display display) {
        this.display = display;
    }

    /** @param enough whether there are enough comparisons for the figures to say something */
    record Row(
            String lead,
            int comparisons,
            boolean enough,
            String coverage,
            String loss,
            String planLoss,
            String ratioLoss,
            String bias) {}

    String sentence(TrackRecord record) {
        TrackRecord.Lead next = record.nextDay();
        if (next == null) {
            return display.text("forecast.trust.none", TrackRecord.ENOUGH);
        }
        if (!next.isEnough()) {
            return display.text("forecast.trust.too-few", next.coverage().of(), TrackRecord.ENOUGH);
        }
        String better = next.loss() < Math.min(next.planLoss(), next.ratioLoss())
                ? "forecast.trust.better"
                : "forecast.trust.no-better";
        return display.text(
                        "forecast.trust.next-day",
                        next.coverage().of(),
                        next.coverage().inside(),
                        Math.round(next.coverage().of() * 0.8))
                + " "
                + display.text(better);
    }

    List<Row> rows(TrackRecord record) {
        return record.leads().stream().map(this::row).toList();
    }

    private Row row(TrackRecord.Lead lead) {
        return new Row(
                display.text("forecast.trust.lead", lead.days()),
                lead.coverage().of(),
                lead.isEnough(),
                display.text(
                        "forecast.trust.coverage",
                        lead.coverage().inside(),
                        lead.coverage().of(),
                        Math.round(lead.coverage().share() * PER_CENT)),
                display.percent(lead.loss()),
                display.percent(lead.planLoss()),
                display.percent(lead.ratioLoss()),
                bias(lead));
    }

    private String bias(TrackRecord.Lead lead) {
        if (lead.bias() == null) {
            return "";
        }
        long percent = Math.round((Math.exp(lead.bias()) - 1) * PER_CENT);
        return percent == 0
                ? display.text("forecast.trust.bias.none")
                : display.text(percent > 0 ? "forecast.trust.bias.high" : "forecast.trust.bias.low", Math.abs(percent));
    }
}
