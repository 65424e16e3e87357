package rollbook.offload;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.inventory.CardState;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.production.Camera;
import rollbook.production.CameraUnits;
import rollbook.production.MediaKind;
import rollbook.production.Membership;
import rollbook.schedule.ShootingDay;
import rollbook.web.NotFoundException;

/** Gathers what the page of a loading offers, and proposes what is most likely meant. */
@Component
class LoadPages {
    private final CameraUnits units;
    private final MediaItems items;
    private final RollSizes sizes;
    private final DayChoices days;
    private final CameraHistory history;

    LoadPages(CameraUnits units, MediaItems items, RollSizes sizes, DayChoices days, CameraHistory history) {
        this.units = units;
        this.items = items;
        this.sizes = sizes;
        this.days = days;
        this.history = history;
    }

    /**
     * The page for that camera, or for the first; empty if the production has no camera.
     *
     * @throws NotFoundException if this production has no such camera
     */
    Optional<LoadPage> page(Membership by, @Nullable UUID cameraId) {
        List<Camera> cameras = units.cameras(by.productionId());
        if (cameraId == null && cameras.isEmpty()) {
            return Optional.empty();
        }
        Camera camera = cameras.stream()
                .filter(candidate -> cameraId == null || candidate.id().equals(cameraId))
                .findFirst()
                .orElseThrow(NotFoundException::new);
        return Optional.of(page(by, cameras, camera));
    }

    private LoadPage page(Membership by, List<Camera> cameras, Camera camera) {
        String next = RollCodes.next(camera.letter(), history.codesOfCamera(by.productionId(), camera.id()));
        List<ShootingDay> shootingDays = days.list(by.productionId(), camera.unitId(), null);
        LoadForm proposal = new LoadForm(
                camera.id(),
                "",
                next,
                days.current(by, shootingDays, camera.unitId()),
                history.lastFormats(by.productionId()).get(camera.id()));
        return new LoadPage(
                cameras,
                camera,
                next,
                blankCards(by),
                days.choices(shootingDays),
                sizes.choices(by.productionId()),
                proposal);
    }

    private List<String> blankCards(Membership by) {
        return items.list(by.productionId(), MediaKind.CARD).stream()
                .filter(card -> card.usable() && card.cardState() == CardState.BLANK)
                .map(MediaItem::code)
                .toList();
    }
}
