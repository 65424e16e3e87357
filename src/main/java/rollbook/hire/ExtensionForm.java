package rollbook.hire;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rollbook.web.Typed;

/**
 * An extension as a person writes it.
 *
 * @param items codes, runs of them too
 * @param entries how many entries about the agreement the person has seen
 */
record ExtensionForm(
        @NotNull @Nullable LocalDate dueOn,
        @NotBlank @Size(max = 4000) String items,
        List<@Valid ModelForm> models,
        @Size(max = 1000) String note,
        int entries) {
    ExtensionForm {
        items = Typed.text(items);
        note = Typed.text(note);
        models = models == null ? List.of() : List.copyOf(models);
    }
}
