package rollbook.format;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.inventory.MediaItems;
import rollbook.production.AllowedFor;
import rollbook.production.MediaKind;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.recording.InvalidFormat;
import rollbook.recording.Packing;
import rollbook.recording.Preset;
import rollbook.recording.Presets;
import rollbook.recording.RecordingFormat;
import rollbook.recording.Sampling;
import rollbook.web.Display;
import rollbook.web.Notice;

@Controller
@RequestMapping("/p/{production}/formats")
class FormatController {
    private final RecordingFormats formats;
    private final MediaItems items;
    private final Display display;

    FormatController(RecordingFormats formats, MediaItems items, Display display) {
        this.formats = formats;
        this.items = items;
        this.display = display;
    }

    @ModelAttribute
    void choices(Model model) {
        model.addAttribute("kinds", CodingKind.values());
        model.addAttribute("samplings", Sampling.values());
        model.addAttribute("packings", Packing.values());
    }

    @GetMapping
    String list(Membership membership, Model model) {
        List<CardSize> sizes = cardSizes(membership);
        List<NamedFormat> list = formats.list(membership.productionId());
        model.addAttribute("sizes", sizes);
        model.addAttribute(
                "rows",
                list.stream()
                        .map(named -> FormatFigures.of(named.id(), named.format(), sizes))
                        .toList());
        model.addAttribute("sentence", listSentence(list, sizes));
        return "format/list";
    }

    @GetMapping("/new")
    @AllowedFor({Role.WRANGLER, Role.OFFICE})
    String choose(@RequestParam Optional<CodingKind> kind, @RequestParam Optional<String> preset, Model model) {
        Optional<Preset> start = preset.flatMap(Presets::find);
        start.map(found -> FormatForm.of(found.format(), 0))
                .or(() -> kind.map(FormatForm::blank))
                .ifPresent(form -> model.addAttribute("formatForm", form));
        model.addAttribute("presets", PresetGroup.all());
        model.addAttribute("chosenPreset", start.map(Preset::key).orElse(""));
        return "format/new";
    }

    @PostMapping("/new")
    @AllowedFor({Role.WRANGLER, Role.OFFICE})
    ModelAndView add(
            Membership membership,
            @RequestParam(defaultValue = "false") boolean preview,
            @ModelAttribute FormatForm formatForm,
            BindingResult errors,
            Model model,
            RedirectAttributes flash) {
        return answer(membership, null, preview, formatForm, errors, model, flash);
    }

    @GetMapping("/{id}")
    String format(Membership membership, @PathVariable UUID id, @RequestParam Optional<CodingKind> kind, Model model) {
        RecordingFormats.Versioned found = formats.versioned(membership.productionId(), id);
        RecordingFormat format = found.named().format();
        FormatForm form = FormatForm.of(format, found.version());
        model.addAttribute("formatForm", kind.map(form::ofKind).orElse(form));
        describe(membership, id, format, model);
        return "format/one";
    }

    @PostMapping("/{id}")
    @AllowedFor({Role.WRANGLER, Role.OFFICE})
    ModelAndView change(
            Membership membership,
            @PathVariable UUID id,
            @RequestParam(defaultValue = "false") boolean preview,
            @ModelAttribute FormatForm formatForm,
            BindingResult errors,
            Model model,
            RedirectAttributes flash) {
        return answer(membership, id, preview, formatForm, errors, model, flash);
    }

    @PostMapping("/{id}/remove")
    @AllowedFor({Role.WRANGLER, Role.OFFICE})
    String remove(Membership membership, @PathVariable UUID id, RedirectAttributes flash) {
        String name = formats.get(membership.productionId(), id).name();
        formats.remove(membership, id);
        flash.addFlashAttribute("notice", Notice.of("format.removed", name));
        return "redirect:" + membership.path("formats");
    }

    private ModelAndView answer(
            Membership membership,
            @Nullable UUID id,
            boolean preview,
            FormatForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes flash) {
        if (errors.hasErrors() || form.kind() == null) {
            // What the page offers can't fail to bind: this came from elsewhere.
            throw new ResponseStatusException(HttpStatus.BAD_REQUEST);
        }
        Optional<RecordingFormat> read = FormatReading.read(form, errors);
        if (read.isPresent() && !preview) {
            try {
                save(membership, id, read.get(), form.version());
                flash.addFlashAttribute(
                        "notice", Notice.of("format.saved", read.get().name()));
                return new ModelAndView("redirect:" + membership.path("formats"));
            } catch (InvalidFormat wrong) {
                FormatReading.reject(errors, wrong);
            }
        }
        if (id != null) {
            describe(membership, id, formats.get(membership.productionId(), id).format(), model);
        } else {
            model.addAttribute("presets", PresetGroup.all());
            model.addAttribute("chosenPreset", "");
        }
        boolean computed = read.isPresent() && !errors.hasErrors();
        List<CardSize> sizes = cardSizes(membership);
        if (computed) {
            model.addAttribute("sizes", sizes);
            model.addAttribute("preview", FormatFigures.of(null, read.get(), sizes));
        }
        return new ModelAndView(
                id == null ? "format/new" : "format/one",
                model.asMap(),
                computed ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT);
    }

    private void save(Membership membership, @Nullable UUID id, RecordingFormat format, int version) {
        if (id == null) {
            formats.add(membership, format);
        } else {
            formats.change(membership, id, format, version);
        }
    }

    private void describe(Membership membership, UUID id, RecordingFormat format, Model model) {
        List<CardSize> sizes = cardSizes(membership);
        model.addAttribute("id", id);
        model.addAttribute("name", format.name());
        model.addAttribute("sizes", sizes);
        model.addAttribute("figures", FormatFigures.of(id, format, sizes));
        model.addAttribute("sentence", sentence(format, sizes));
    }

    private List<CardSize> cardSizes(Membership membership) {
        return CardSize.of(items.list(membership.productionId(), MediaKind.CARD));
    }

    private String listSentence(List<NamedFormat> list, List<CardSize> sizes) {
        return list.stream()
                .map(NamedFormat::format)
                .max(Comparator.comparing(RecordingFormat::dataRate))
                .map(fastest -> list.size() == 1
                        ? sentence(fastest, sizes)
                        : display.text("format.list.sentence", list.size(), sentence(fastest, sizes)))
                .orElseGet(() -> display.text("format.list.none"));
    }

    private String sentence(RecordingFormat format, List<CardSize> sizes) {
        String perMinute = display.size(format.bytesPerMinute().ceiling());
        if (sizes.isEmpty()) {
            return display.text("format.sentence.no-cards", format.name(), perMinute);
        }
        CardSize common =
                sizes.stream().max(Comparator.comparingInt(CardSize::cards)).orElseThrow();
        return display.text(
                "format.sentence",
                format.name(),
                perMinute,
                display.size(common.capacityBytes()),
                FormatFigures.minutes(format, common));
    }
}
