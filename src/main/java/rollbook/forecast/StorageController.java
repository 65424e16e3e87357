package rollbook.forecast;

import java.util.UUID;
import org.springframework.http.ResponseEntity;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.web.Display;
import rollbook.web.FileAnswer;
import rollbook.web.NotFoundException;
import rollbook.web.Notice;

/** Will storage last the show? */
@Controller
class StorageController {

    private final ForecastRuns runs;
    private final ForecastRequests requests;
    private final StoragePages pages;
    private final StorageWords words;
    private final Display display;
    private final JdbcClient jdbc;

    StorageController(
            ForecastRuns runs,
            ForecastRequests requests,
            StoragePages pages,
            StorageWords words,
            Display display,
            JdbcClient jdbc) {
        this.runs = runs;
        this.requests = requests;
        this.pages = pages;
        this.words = words;
        this.display = display;
        this.jdbc = jdbc;
    }

    @GetMapping("/p/{production}/storage")
    String show(Membership membership, Model model) {
        model.addAttribute("mayRecompute", membership.may(Role.OFFICE, Role.POST));
        ForecastRun.Standing standing = runs.standing(membership.productionId());
        ForecastRun run = standing.newest();
        Missing missing = missing(membership.productionId());
        if (missing != Missing.NOTHING || run == null) {
            model.addAttribute("missing", missing);
            model.addAttribute("outdated", standing.outdated());
            model.addAttribute("failure", standing.failure());
            model.addAttribute("sentence", display.text("forecast.missing." + missing));
            return "forecast/nothing";
        }
        model.addAttribute("page", pages.page(run, standing, membership));
        model.addAttribute("sentence", words.sentence(run.results()));
        return "forecast/storage";
    }

    @GetMapping("/p/{production}/storage.csv")
    ResponseEntity<String> download(Membership membership) {
        ForecastRun run = runs.standing(membership.productionId()).newest();
        if (run == null) {
            throw new NotFoundException();
        }
        String fileName =
                "%s-storage-%s.csv".formatted(membership.code(), run.results().today());
        return FileAnswer.kept(
                fileName,
                FileAnswer.CSV,
                StorageCsv.of(run.results(), pages.burnDowns(run, membership.productionId())));
    }

    @PostMapping("/p/{production}/storage/forecasts")
    @AllowedFor({Role.OFFICE, Role.POST})
    String recompute(Membership membership, RedirectAttributes flash) {
        requests.ask(membership.productionId(), Because.PERSON);
        flash.addFlashAttribute("notice", Notice.of("forecast.asked"));
        return "redirect:" + membership.path("storage");
    }

    /** What has to be there before there is anything to forecast. */
    enum Missing {
        DAYS,
        LEGS,
        NOTHING
    }

    private Missing missing(UUID productionId) {
        return jdbc.sql("""
                        select case when not exists (select 1 from schedule_day where production_id = :production) then 'DAYS'
                                    when not exists (select 1 from production_leg where production_id = :production) then 'LEGS'
                                    else 'NOTHING' end
                        """)
                .param("production", productionId)
                .query(Missing.class)
                .single();
    }
}
