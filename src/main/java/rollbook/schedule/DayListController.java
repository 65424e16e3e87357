package rollbook.schedule;

import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import rollbook.format.NamedFormat;
import rollbook.format.RecordingFormats;
import rollbook.production.CameraUnits;
import rollbook.production.Membership;
import rollbook.production.Productions;

@Controller
class DayListController {
    private final ShootingDays days;
    private final CameraUnits units;
    private final RecordingFormats formats;
    private final Productions productions;
    private final WhereWeAre where;
    private final DayBars bars;
    private final BarsPictures pictures;
    private final DayListing listing;
    private final Clock clock;

    DayListController(
            ShootingDays days,
            CameraUnits units,
            RecordingFormats formats,
            Productions productions,
            WhereWeAre where,
            DayBars bars,
            BarsPictures pictures,
            DayListing listing,
            Clock clock) {
        this.days = days;
        this.units = units;
        this.formats = formats;
        this.productions = productions;
        this.where = where;
        this.bars = bars;
        this.pictures = pictures;
        this.listing = listing;
        this.clock = clock;
    }

    @GetMapping("/p/{production}/days")
    String list(Membership membership, @RequestParam Map<String, String> address, Model model) {
        UUID production = membership.productionId();
        List<ShootingDay> all = days.list(production);
        Map<UUID, NamedFormat> byId = formats.byId(production);
        Map<UUID, DayTotals> totals = DayTotals.byDay(days.plannedMinutes(production), byId);
        Map<LocalDate, String> holidays = productions.holidays(production);
        LocalDate today = LocalDate.now(clock.withZone(membership.zone()));
        List<UnitDays> ofUnits = units.units(production).stream()
                .map(unit -> UnitDays.of(unit, all, totals, holidays, today))
                .toList();
        DayListing.Asked asked = listing.read(membership.path("days"), address);
        model.addAttribute("list", asked.listing());
        model.addAttribute("units", ofUnits);
        model.addAttribute("bars", pictures(bars.of(production, all, totals, byId, today)));
        model.addAttribute("shown", ofUnits.stream().map(asked::of).toList());
        model.addAttribute("all", all.size());
        model.addAttribute("none", all.isEmpty());
        model.addAttribute("sentence", where.sentence(ofUnits));
        return "schedule/list";
    }

    private Map<UUID, BarsPicture> pictures(Map<UUID, UnitBars> byUnit) {
        return byUnit.entrySet().stream()
                .collect(Collectors.toMap(Map.Entry::getKey, unit -> pictures.picture(unit.getKey(), unit.getValue())));
    }
}
