package rollbook.hire;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.web.FileAnswer;
import rollbook.web.Notice;

/** What is hired, until when and for how much; as a page and as a file. And when people are told. */
@Controller
@RequestMapping("/p/{production}")
class HireController {

    private final HirePages pages;
    private final Hires hires;
    private final HireReminders reminders;
    private final HireListing listing;

    HireController(HirePages pages, Hires hires, HireReminders reminders, HireListing listing) {
        this.listing = listing;
        this.pages = pages;
        this.hires = hires;
        this.reminders = reminders;
    }

    /** @param version of the setting that the person has seen */
    record ReminderForm(@NotNull @Min(0) @Max(60) @Nullable Integer days, int version) {}

    @GetMapping("/hire")
    ModelAndView list(Membership membership, @RequestParam Map<String, String> address) {
        return new ModelAndView("hire/list").addObject("page", pages.list(membership, address));
    }

    @GetMapping("/hire.csv")
    ResponseEntity<String> download(Membership membership, @RequestParam Map<String, String> address) {
        List<Hired> all = hires.all(membership.productionId(), membership.zone());
        HireListing.Asked asked = listing.read(membership.path("hire"), address, all);
        String fileName = "%s-hire-%s.csv".formatted(membership.code(), pages.today(membership));
        return FileAnswer.kept(
                fileName,
                FileAnswer.CSV,
                HireCsv.of(
                        all.stream().filter(asked::isFor).toList(),
                        pages.today(membership),
                        HirePages.currency(membership)));
    }

    @GetMapping("/hire/reminder")
    @AllowedFor(Role.OFFICE)
    ModelAndView reminder(Membership membership) {
        HireReminders.Reminder reminder = reminders.of(membership.productionId());
        return new ModelAndView("hire/reminder")
                .addObject("reminderForm", new ReminderForm(reminder.days(), reminder.version()));
    }

    @PostMapping("/hire/reminder")
    @AllowedFor(Role.OFFICE)
    ModelAndView remind(
            Membership membership, @Valid ReminderForm form, BindingResult result, RedirectAttributes flash) {
        if (result.hasErrors() || form.days() == null) {
            return new ModelAndView("hire/reminder", HttpStatus.UNPROCESSABLE_CONTENT);
        }
        reminders.change(membership, new HireReminders.Reminder(form.days(), form.version()));
        flash.addFlashAttribute("notice", Notice.of("hire.reminder.saved", form.days()));
        return new ModelAndView("redirect:" + membership.path("hire"));
    }
}
