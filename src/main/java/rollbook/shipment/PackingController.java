package rollbook.shipment;

import jakarta.validation.Valid;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.inventory.MediaItem;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.web.Notice;
import rollbook.web.Refusal;

/** Packs shipments, sends them, takes that back, and hands items over without a carrier. */
@Controller
@RequestMapping("/p/{production}/shipments")
class PackingController {
    private static final LocalTime USUAL_ARRIVAL = LocalTime.of(18, 0);

    private final Shipments shipments;
    private final Packing packing;
    private final Sending sending;
    private final FormReading reading;
    private final ShipmentPages pages;
    private final Clock clock;

    PackingController(
            Shipments shipments,
            Packing packing,
            Sending sending,
            FormReading reading,
            ShipmentPages pages,
            Clock clock) {
        this.shipments = shipments;
        this.packing = packing;
        this.sending = sending;
        this.reading = reading;
        this.pages = pages;
        this.clock = clock;
    }

    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    @GetMapping("/new")
    ModelAndView blank(Membership membership, @RequestParam(defaultValue = "") List<String> items) {
        String codes = String.join("\n", items);
        return form(membership, null, HttpStatus.OK)
                .addObject("shipmentForm", ShipmentForm.blank(codes, reading.placeOf(membership, codes)));
    }

    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    @PostMapping("/new")
    ModelAndView pack(
            Membership membership,
            @Valid @ModelAttribute ShipmentForm form,
            BindingResult result,
            RedirectAttributes flash) {
        List<MediaItem> items = items(membership, form, result);
        @Nullable Instant expected = reading.expected(membership, form.expectedBy(), result);
        @Nullable
        UUID id = result.hasErrors()
                ? null
                : unlessBoxed(result, () -> packing.pack(membership, details(form, expected), items));
        if (id == null) {
            return form(membership, null, HttpStatus.UNPROCESSABLE_CONTENT);
        }
        return done(membership, id, "shipment.packed", flash);
    }

    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    @GetMapping("/{id}/edit")
    ModelAndView edit(Membership membership, @PathVariable UUID id) {
        Shipment shipment = Packing.requirePacking(shipments.get(membership.productionId(), id));
        return form(membership, shipment, HttpStatus.OK)
                .addObject(
                        "shipmentForm",
                        ShipmentForm.of(shipment, shipments.items(membership.productionId(), id), membership.zone()));
    }

    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    @PostMapping("/{id}/edit")
    ModelAndView change(
            Membership membership,
            @PathVariable UUID id,
            @Valid @ModelAttribute ShipmentForm form,
            BindingResult result,
            RedirectAttributes flash) {
        Shipment shipment = Packing.requirePacking(shipments.get(membership.productionId(), id));
        List<MediaItem> items = items(membership, form, result);
        @Nullable Instant expected = reading.expected(membership, form.expectedBy(), result);
        @Nullable
        UUID changed = result.hasErrors()
                ? null
                : unlessBoxed(result, () -> {
                    packing.change(membership, id, details(form, expected), items, form.version());
                    return id;
                });
        if (changed == null) {
            return form(membership, shipment, HttpStatus.UNPROCESSABLE_CONTENT);
        }
        return done(membership, id, "shipment.changed", flash);
    }

    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    @PostMapping("/{id}/discard")
    ModelAndView discard(
            Membership membership, @PathVariable UUID id, @RequestParam int version, RedirectAttributes flash) {
        packing.discard(membership, id, version);
        return done(membership, id, "shipment.discarded", flash);
    }

    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    @GetMapping("/{id}/send")
    ModelAndView askToSend(Membership membership, @PathVariable UUID id) {
        Shipment shipment = Packing.requirePacking(shipments.get(membership.productionId(), id));
        LocalDate tomorrow =
                LocalDate.ofInstant(clock.instant(), membership.zone()).plusDays(1);
        LocalDateTime expected = shipment.expectedBy() == null
                ? tomorrow.atTime(USUAL_ARRIVAL)
                : LocalDateTime.ofInstant(shipment.expectedBy(), membership.zone());
        return send(membership, shipment, HttpStatus.OK)
                .addObject("expectedForm", new ExpectedForm(expected, "", shipment.version()));
    }

    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    @PostMapping("/{id}/send")
    ModelAndView send(
            Membership membership,
            @PathVariable UUID id,
            @Valid @ModelAttribute ExpectedForm form,
            BindingResult result,
            RedirectAttributes flash) {
        Shipment shipment = Packing.requirePacking(shipments.get(membership.productionId(), id));
        @Nullable Instant expected = reading.expected(membership, form.expectedBy(), result);
        if (result.hasErrors() || expected == null) {
            return send(membership, shipment, HttpStatus.UNPROCESSABLE_CONTENT);
        }
        sending.send(membership, id, expected, form.version());
        return done(membership, id, "shipment.sent", flash);
    }

    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    @PostMapping("/{id}/take-back")
    ModelAndView takeBack(
            Membership membership, @PathVariable UUID id, @RequestParam int version, RedirectAttributes flash) {
        sending.takeBack(membership, id, version);
        return done(membership, id, "shipment.taken-back", flash);
    }

    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    @GetMapping("/hand-over")
    ModelAndView askToHandOver(Membership membership, @RequestParam(defaultValue = "") List<String> items) {
        return handOver(membership, HttpStatus.OK)
                .addObject("handOverForm", new HandOverForm(String.join("\n", items), null, "", ""));
    }

    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    @PostMapping("/hand-over")
    ModelAndView handOver(
            Membership membership,
            @Valid @ModelAttribute HandOverForm form,
            BindingResult result,
            RedirectAttributes flash) {
        List<MediaItem> items = reading.items(membership, form.items(), result);
        if (!reading.isPlace(membership, form.toPlaceId())) {
            FormReading.reject(result, "toPlaceId", "shipment.problem.place");
        }
        if (!items.isEmpty()) {
            reading.requireAt(items, items.get(0).placeId(), result);
        }
        @Nullable
        UUID id = result.hasErrors()
                ? null
                : unlessBoxed(result, () -> sending.handOver(membership, details(form, items), items));
        if (id == null) {
            return handOver(membership, HttpStatus.UNPROCESSABLE_CONTENT);
        }
        return done(membership, id, "shipment.handed-over", flash);
    }

    private List<MediaItem> items(Membership membership, ShipmentForm form, BindingResult result) {
        List<MediaItem> items = reading.items(membership, form.items(), result);
        if (!reading.isPlace(membership, form.fromPlaceId())) {
            FormReading.reject(result, "fromPlaceId", "shipment.problem.place");
        } else {
            reading.requireAt(items, Objects.requireNonNull(form.fromPlaceId()), result);
        }
        if (!reading.isPlace(membership, form.toPlaceId())) {
            FormReading.reject(result, "toPlaceId", "shipment.problem.place");
        }
        if (!form.isWeightReadable()) {
            FormReading.reject(result, "weight", "shipment.problem.weight");
        }
        return items;
    }

    /** Null if an item turns out to be in another shipment, or not here: that is told at the field. */
    private static @Nullable UUID unlessBoxed(BindingResult result, java.util.function.Supplier<UUID> act) {
        try {
            return act.get();
        } catch (Refusal refusal) {
            if (!refusal.key().equals("shipment.refused.in-another")
                    && !refusal.key().equals("shipment.refused.at-work")) {
                throw refusal;
            }
            FormReading.reject(result, "items", refusal.key(), refusal.args().toArray());
            return null;
        }
    }

    private static ShipmentDetails details(ShipmentForm form, @Nullable Instant expected) {
        return new ShipmentDetails(
                Objects.requireNonNull(form.fromPlaceId()),
                Objects.requireNonNull(form.toPlaceId()),
                form.receiver(),
                form.carrier(),
                form.seals(),
                form.grams(),
                form.note(),
                expected);
    }

    private static ShipmentDetails details(HandOverForm form, List<MediaItem> items) {
        return new ShipmentDetails(
                items.get(0).placeId(),
                Objects.requireNonNull(form.toPlaceId()),
                form.receiver(),
                "",
                "",
                null,
                form.note(),
                null);
    }

    private ModelAndView form(Membership membership, @Nullable Shipment kept, HttpStatus status) {
        return new ModelAndView("shipment/pack", status)
                .addObject("kept", kept)
                .addObject("places", reading.places(membership));
    }

    private ModelAndView handOver(Membership membership, HttpStatus status) {
        return new ModelAndView("shipment/hand-over", status).addObject("places", reading.places(membership));
    }

    private ModelAndView send(Membership membership, Shipment shipment, HttpStatus status) {
        return new ModelAndView("shipment/send", status).addObject("view", pages.one(membership, shipment.id()));
    }

    private ModelAndView done(Membership membership, UUID id, String notice, RedirectAttributes flash) {
        flash.addFlashAttribute(
                "notice",
                Notice.of(notice, shipments.get(membership.productionId(), id).number()));
        return new ModelAndView("redirect:" + membership.path("shipments/" + id));
    }
}
