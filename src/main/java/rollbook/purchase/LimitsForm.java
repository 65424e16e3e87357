package rollbook.purchase;

import jakarta.validation.constraints.Digits;
import jakarta.validation.constraints.PositiveOrZero;
import java.math.BigDecimal;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.springframework.validation.BindingResult;
import rollbook.quantity.Money;

/** Up to which amount whom orders are approved by, as a person writes it: empty for any, zero for none. */
record LimitsForm(
        @PositiveOrZero @Digits(integer = 9, fraction = 3) @Nullable
        BigDecimal office,

        @PositiveOrZero @Digits(integer = 9, fraction = 3) @Nullable
        BigDecimal wrangler,

        @PositiveOrZero @Digits(integer = 9, fraction = 3) @Nullable
        BigDecimal post,

        int version) {

    static LimitsForm of(ApprovalLimits limits, Money money) {
        return new LimitsForm(
                amount(limits.officeMinorUnits(), money),
                amount(limits.wranglerMinorUnits(), money),
                amount(limits.postMinorUnits(), money),
                limits.version());
    }

    private static @Nullable BigDecimal amount(@Nullable Long minorUnits, Money money) {
        return minorUnits == null ? null : money.amount(minorUnits);
    }

    /** Looks for what a single field doesn't tell; only in a form without errors. */
    void look(Money money, BindingResult result) {
        Map<String, BigDecimal> given = new TreeMap<>();
        if (office != null) {
            given.put("office", office);
        }
        if (wrangler != null) {
            given.put("wrangler", wrangler);
        }
        if (post != null) {
            given.put("post", post);
        }
        given.forEach((field, amount) -> {
            if (!money.canPay(amount)) {
                result.rejectValue(field, "purchase.form.too-fine");
            }
        });
    }

    /** Only of a form without errors. */
    ApprovalLimits limits(Money money) {
        return new ApprovalLimits(
                office == null ? null : money.toMinorUnits(office),
                wrangler == null ? null : money.toMinorUnits(wrangler),
                post == null ? null : money.toMinorUnits(post),
                version);
    }
}
