package rollbook.production;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.web.Choice;
import rollbook.web.Notice;
import rollbook.web.Typed;

/** Units and their cameras: add and remove. */
@Controller
@RequestMapping("/p/{production}/settings")
class UnitsController {
    private final CameraUnits cameraUnits;

    UnitsController(CameraUnits cameraUnits) {
        this.cameraUnits = cameraUnits;
    }

    @AllowedFor({})
    @GetMapping("/units/new")
    ModelAndView unit(Membership membership) {
        return new ModelAndView("production/unit", "unitForm", new UnitForm(""));
    }

    @AllowedFor({})
    @PostMapping("/units/new")
    ModelAndView addUnit(Membership membership, @Valid UnitForm form, BindingResult result, RedirectAttributes flash) {
        boolean saved = Typed.save(
                result, "name", "production.refused.unit-exists", () -> cameraUnits.addUnit(membership, form.name()));
        return saved
                ? done(membership, flash, Notice.of("production.unit.saved", form.name()))
                : new ModelAndView("production/unit", HttpStatus.UNPROCESSABLE_CONTENT);
    }

    @AllowedFor({})
    @PostMapping("/units/{id}/remove")
    ModelAndView removeUnit(Membership membership, @PathVariable UUID id, RedirectAttributes flash) {
        cameraUnits.removeUnit(membership, id);
        return done(membership, flash, Notice.of("production.unit.removed"));
    }

    @AllowedFor({})
    @GetMapping("/cameras/new")
    ModelAndView camera(Membership membership, @RequestParam(required = false) @Nullable UUID unit) {
        return cameraPage(membership, HttpStatus.OK).addObject("cameraForm", new CameraForm(unit, ""));
    }

    @AllowedFor({})
    @PostMapping("/cameras/new")
    ModelAndView addCamera(
            Membership membership, @Valid CameraForm form, BindingResult result, RedirectAttributes flash) {
        boolean saved = Typed.save(
                result,
                "letter",
                "production.refused.camera-exists",
                () -> cameraUnits.addCamera(membership, Objects.requireNonNull(form.unit()), form.letter()));
        return saved
                ? done(membership, flash, Notice.of("production.camera.saved", form.letter()))
                : cameraPage(membership, HttpStatus.UNPROCESSABLE_CONTENT);
    }

    @AllowedFor({})
    @PostMapping("/cameras/{id}/remove")
    ModelAndView removeCamera(Membership membership, @PathVariable UUID id, RedirectAttributes flash) {
        cameraUnits.removeCamera(membership, id);
        return done(membership, flash, Notice.of("production.camera.removed"));
    }

    private ModelAndView cameraPage(Membership membership, HttpStatus status) {
        List<Choice> units = cameraUnits.units(membership.productionId()).stream()
                .map(unit -> new Choice(unit.id().toString(), unit.name()))
                .toList();
        return new ModelAndView("production/camera", status).addObject("units", units);
    }

    private static ModelAndView done(Membership membership, RedirectAttributes flash, Notice notice) {
        flash.addFlashAttribute("notice", notice);
        return new ModelAndView("redirect:" + membership.path("settings"));
    }

    record UnitForm(@NotBlank @Size(max = 60) String name) {
        UnitForm {
            name = Typed.text(name);
        }
    }

    record CameraForm(
            @NotNull @Nullable UUID unit,
            @NotBlank @Pattern(regexp = "|[A-Z]") String letter) {
        CameraForm {
            letter = Typed.code(letter);
        }
    }
}
