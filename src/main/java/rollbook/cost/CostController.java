package rollbook.cost;

import jakarta.servlet.http.HttpServletResponse;
import jakarta.validation.Valid;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
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
    void export(Membership membership, HttpServletResponse response) throws IOException {
        String csv = CostCsv.of(facts.of(membership).sheet(), Money.of(membership.currency()));
        response.setContentType("text/csv");
        response.setCharacterEncoding(StandardCharsets.UTF_8.name());
        response.setHeader(
                HttpHeaders.CONTENT_DISPOSITION,
                ContentDisposition.attachment()
                        .filename("costs-" + membership.code().toLowerCase(Locale.ROOT) + ".csv")
                        .build()
                        .toString());
        response.getWriter().write(csv);
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
