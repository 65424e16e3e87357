package rollbook.hire;

import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Component;
import rollbook.production.TypedCode;

/** HIRE-1. */
@Component
class HireCode implements TypedCode {
    private final Hires hires;

    HireCode(Hires hires) {
        this.hires = hires;
    }

    @Override
    public Optional<String> page(UUID productionId, String typed) {
        return hires.findByCode(productionId, typed).map(id -> "hire/" + id);
    }
}
