package rollbook.purchase;

import java.util.Optional;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.springframework.stereotype.Component;
import rollbook.production.TypedCode;

/** Order 7. */
@Component
class OrderCode implements TypedCode {
    private static final Pattern CODE = Pattern.compile("(?i)order[\\s-]*0*(\\d{1,6})");

    private final Orders orders;

    OrderCode(Orders orders) {
        this.orders = orders;
    }

    @Override
    public Optional<String> page(UUID productionId, String typed) {
        Matcher code = CODE.matcher(typed);
        if (!code.matches()) {
            return Optional.empty();
        }
        int number = Integer.parseInt(code.group(1));
        return orders.list(productionId).stream()
                .filter(order -> order.number() == number)
                .findFirst()
                .map(order -> "orders/" + order.id());
    }
}
