package rollbook.cost;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.forecast.CostToCome;
import rollbook.production.Membership;
import rollbook.web.Display;

/** Puts costs into words. */
@Component
class CostPages {
    private final Display display;

    CostPages(Display display) {
        this.display = display;
    }

    CostPage page(Membership viewer, Costs costs) {
        return new Writing(viewer, costs).page();
    }

    /** The page's first words. */
    String sentence(Membership viewer, Costs costs) {
        return new Writing(viewer, costs).sentence();
    }

    private final class Writing {
        private final Membership viewer;
        private final Costs costs;
        private final CostSheet sheet;
        private final Currency currency;

        Writing(Membership viewer, Costs costs) {
            this.viewer = viewer;
            this.costs = costs;
            this.sheet = costs.sheet();
            this.currency = Currency.getInstance(viewer.currency());
        }

        CostPage page() {
            return new CostPage(
                    sentence(),
                    totals(),
                    CostBar.of(sheet),
                    sheet.byKind().stream().map(this::kind).toList(),
                    ratios(),
                    buyOrHire(),
                    sheet.lines().stream()
                            .sorted(Comparator.comparing(CostLine::stage)
                                    .thenComparing(CostLine::kind)
                                    .thenComparing(CostLine::source)
                                    .thenComparing(CostLine::what))
                            .map(this::line)
                            .toList(),
                    costs.budgets().stream()
                            .map(budget -> new CostPage.BudgetRow(
                                    money(budget.minorUnits()), budget.reason(), budget.byName(), budget.at()))
                            .toList(),
                    costs.unpriced(),
                    costs.toCome() == null ? null : costs.toCome().computedAt());
        }

        private String sentence() {
            List<String> sentences = new ArrayList<>();
            Long left = sheet.left();
            if (left == null) {
                sentences.add(display.text("cost.sentence.no-budget", money(sheet.total())));
            } else if (left < 0) {
                sentences.add(display.text(
                        "cost.sentence.over", money(sheet.total()), money(budget()), money(Math.negateExact(left))));
            } else {
                sentences.add(display.text("cost.sentence.within", money(sheet.total()), money(budget()), money(left)));
            }
            sentences.add(display.text(
                    "cost.sentence.stages", money(sheet.of(Stage.SPENT)), money(sheet.of(Stage.COMMITTED))));
            CostToCome toCome = costs.toCome();
            if (toCome == null) {
                sentences.add(display.text("cost.sentence.no-forecast"));
            } else if (!toCome.complete()) {
                sentences.add(display.text("cost.sentence.incomplete"));
            } else {
                sentences.add(display.text("cost.sentence.to-come", money(sheet.of(Stage.TO_COME))));
            }
            return String.join(" ", sentences);
        }

        private long budget() {
            Long budget = sheet.budgetMinorUnits();
            return budget == null ? 0 : budget;
        }

        private List<CostPage.Total> totals() {
            List<CostPage.Total> totals = new ArrayList<>();
            for (Stage stage : Stage.values()) {
                totals.add(total("cost.stage." + stage, sheet.of(stage), false));
            }
            totals.add(total("cost.total", sheet.total(), true));
            Long left = sheet.left();
            if (left != null) {
                totals.add(total("cost.budget", budget(), false));
                totals.add(total(left < 0 ? "cost.short" : "cost.left", Math.abs(left), true));
            }
            return totals;
        }

        private CostPage.Total total(String key, long minorUnits, boolean strong) {
            return new CostPage.Total(display.text(key), display.text(key + ".explained"), money(minorUnits), strong);
        }

        private CostPage.KindRow kind(CostSheet.OfKind row) {
            return new CostPage.KindRow(
                    display.text("cost.kind." + row.kind()),
                    way(row.kind(), row.hired()),
                    money(row.spent()),
                    money(row.committed()),
                    money(row.toCome()),
                    money(row.total()));
        }

        /** A delivery is neither bought nor hired. */
        private String way(CostKind kind, boolean hired) {
            return kind == CostKind.DELIVERY ? "" : display.text(hired ? "cost.hired" : "cost.bought");
        }

        private List<CostPage.Ratio> ratios() {
            CostToCome toCome = costs.toCome();
            if (toCome == null) {
                return List.of();
            }
            Scope soFar = new Scope(toCome.recordedBytes(), toCome.wrappedDays());
            BigInteger bytes = toCome.recordedBytes().add(toCome.bytesToCome());
            Scope show = new Scope(bytes, toCome.wrappedDays() + toCome.daysToCome());
            long spent = sheet.of(Stage.SPENT);
            return List.of(
                    new CostPage.Ratio(
                            display.text("cost.per-terabyte", display.size(soFar.bytes()), display.size(bytes)),
                            moneyOrNone(soFar.perTerabyteMinorUnits(spent)),
                            moneyOrNone(show.perTerabyteMinorUnits(sheet.total()))),
                    new CostPage.Ratio(
                            display.text("cost.per-day", soFar.shootingDays(), show.shootingDays()),
                            moneyOrNone(soFar.perDayMinorUnits(spent)),
                            moneyOrNone(show.perDayMinorUnits(sheet.total()))));
        }

        private List<String> buyOrHire() {
            List<String> sentences = new ArrayList<>();
            sentences.add(display.text("cost.buy-hire", money(sheet.of(false)), money(sheet.of(true))));
            for (Comparison one : costs.comparisons()) {
                long difference = one.buyMinorUnits() - one.hireMinorUnits();
                sentences.add(display.text(
                        difference < 0 ? "cost.buy-hire.dearer" : "cost.buy-hire.cheaper",
                        one.code(),
                        one.items(),
                        one.model(),
                        money(one.hireMinorUnits()),
                        money(one.buyMinorUnits()),
                        money(Math.abs(difference))));
            }
            CostToCome toCome = costs.toCome();
            Long withoutHire = toCome == null ? null : toCome.withoutHireMinorUnits();
            if (withoutHire != null) {
                sentences.add(
                        display.text("cost.buy-hire.to-come", money(sheet.of(Stage.TO_COME)), money(withoutHire)));
            }
            return sentences;
        }

        private CostPage.LineRow line(CostLine line) {
            return new CostPage.LineRow(
                    display.text("cost.stage." + line.stage()),
                    display.text("cost.kind." + line.kind()),
                    way(line.kind(), line.hired()),
                    line.what(),
                    line.source(),
                    viewer.path(line.path()),
                    line.on() == null ? "" : display.shortDate(line.on()),
                    money(line.minorUnits()));
        }

        private String moneyOrNone(@Nullable Long minorUnits) {
            return minorUnits == null ? display.text("web.none") : money(minorUnits);
        }

        private String money(long minorUnits) {
            return display.money(minorUnits, currency);
        }
    }
}
