package rollbook.production;

import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.validation.BindingResult;
import rollbook.web.Typed;

/** A leg of the copy plan as it is typed. */
record LegForm(
        @NotBlank @Size(max = 60) String name,
        @NotNull @Nullable MediaKind mediaKind,
        @NotNull @Nullable UUID placeId,
        @NotNull @Nullable Rendition rendition,
        @Min(1) @Max(100) @Nullable Integer keptPercent,
        @Min(0) @Max(3650) @Nullable Integer returnsAfterDays,
        boolean neededToClear,
        int version) {
    LegForm {
        name = Typed.text(name);
    }

    static LegForm blank() {
        return new LegForm("", MediaKind.DRIVE, null, Rendition.AS_RECORDED, null, null, true, 0);
    }

    static LegForm of(Leg leg) {
        Integer kept = leg.rendition() == Rendition.ENCODED ? leg.keptPercent() : null;
        return new LegForm(
                leg.name(),
                leg.mediaKind(),
                leg.placeId(),
                leg.rendition(),
                kept,
                leg.returnsAfterDays(),
                leg.neededToClear(),
                leg.version());
    }

    void check(BindingResult result) {
        if (!Typed.isReadable(result)) {
            return;
        }
        if (mediaKind != null && !mediaKind.holdsCopies()) {
            result.rejectValue("mediaKind", "production.leg.no-copies");
        }
        if (rendition == Rendition.ENCODED && keptPercent == null) {
            result.rejectValue("keptPercent", "production.leg.percent-missing");
        }
    }

    /** The leg, once the form is right. */
    Leg leg(UUID id) {
        int percent = rendition == Rendition.ENCODED ? Objects.requireNonNull(keptPercent) : 100;
        return new Leg(
                id,
                name,
                Objects.requireNonNull(mediaKind),
                Objects.requireNonNull(placeId),
                "",
                Objects.requireNonNull(rendition),
                percent,
                returnsAfterDays,
                neededToClear,
                version);
    }
}
