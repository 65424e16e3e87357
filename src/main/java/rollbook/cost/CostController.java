package rollbook.cost;

import jakarta.validation.Valid;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.quantity.Money;
import rollbook.web.FileAnswer;
import rollbook.web.Notice;

/** What media cost, as a page and as a file, and the budget. */
@Controller
class CostController {
    private final CostFacts facts;
    private final CostPages pages;
    private final Budgets budgets;

    CostController(CostFacts facts, CostPages pages, Budgets budgets) {
        this.facts = facts;
        this.pages = pages;
        this.budgets = budgets;
    }

    @GetMapping("/p/{production}/costs")
    ModelAndView show(Membership membership) {
        return new ModelAndView("cost/costs").addObject("page", pages.page(membership, facts.of(membership)));
    }

    @GetMapping("/p/{production}/costs.csv")
    ResponseEntity<String> export(Membership membership) {
        String csv = CostCsv.of(facts.of(membership).sheet(), Money.of(membership.currency()));
        return FileAnswer.kept("costs-" + membership.code().toLowerCase(Locale.ROOT) + ".csv", FileAnswer.CSV, csv);
    }

    @AllowedFor(Role.OFFICE)
    @GetMapping("/p/{production}/costs/budget")
    ModelAndView budget(Membership membership) {
        List<Budget> before = budgets.of(membership.productionId());
        Money money = Money.of(membership.currency());
        BigDecimal amount = before.isEmpty() ? null : money.amount(before.get(0).minorUnits());
        return new ModelAndView("cost/budget").addObject("budgetForm", new BudgetForm(amount, "", before.size()));
    }

    @AllowedFor(Role.OFFICE)
    @PostMapping("/p/{production}/costs/budget")
    ModelAndView set(Membership membership, @Valid BudgetForm form, BindingResult wrong, RedirectAttributes flash) {
        Money money = Money.of(membership.currency());
        BigDecimal amount = form.amount();
        if (amount != null && !money.canPay(amount)) {
            wrong.rejectValue("amount", "cost.budget.too-fine", new Object[] {money.digits()}, null);
        }
        if (wrong.hasErrors()) {
            return new ModelAndView("cost/budget", HttpStatus.UNPROCESSABLE_CONTENT);
        }
        budgets.set(
                membership,
                money.toMinorUnits(Objects.requireNonNull(amount)),
                Objects.requireNonNull(form.reason()).strip(),
                form.budgets());
        flash.addFlashAttribute("notice", Notice.of("cost.budget.saved"));
        return new ModelAndView("redirect:" + membership.path("costs"));
    }
}
