package rollbook.post;

import java.math.BigInteger;
import java.time.Clock;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.label.LabelAddress;
import rollbook.label.PdfPress;
import rollbook.label.QrSymbol;
import rollbook.offload.Copies;
import rollbook.offload.Copy;
import rollbook.offload.Roll;
import rollbook.offload.Rolls;
import rollbook.production.Membership;
import rollbook.production.Rendition;
import rollbook.verification.CopyStanding;
import rollbook.verification.CopyStandings;
import rollbook.web.Display;
import rollbook.web.NotFoundException;

/** What lies on a medium, as a PDF with its label's code. */
@Component
class ContentsList {
    private static final String STYLE = """
            @page { size: A4; margin: 16mm 14mm 18mm 14mm;
                @bottom-right { font-family: label-text; font-size: 8pt; content: counter(page) " / " counter(pages); } }
            body { font-family: label-text; font-size: 9pt; line-height: 1.35; color: #000; }
            h1 { font-family: label-code; font-size: 26pt; font-weight: 700; margin: 0; }
            code { font-family: label-code; font-weight: 700; }
            p { margin: 1mm 0; }
            .head { width: 100%; border-bottom: 0.4mm solid #000; margin-bottom: 4mm; }
            .head td { vertical-align: top; padding: 0 0 3mm 0; }
            .symbol { text-align: right; width: 34mm; }
            .list { width: 100%; border-collapse: collapse; -fs-table-paginate: paginate; }
            .list th { text-align: left; border-bottom: 0.3mm solid #000; padding: 1mm 2mm 1mm 0; font-weight: 400; font-size: 8pt; }
            .list td { border-bottom: 0.1mm solid #999; padding: 1.2mm 2mm 1.2mm 0; }
            .list tr { page-break-inside: avoid; }
            .figure { text-align: right; }
            """;

    private final MediaItems items;
    private final Rolls rolls;
    private final Copies copies;
    private final CopyStandings standings;
    private final PdfPress press;
    private final Display display;
    private final Clock clock;

    ContentsList(
            MediaItems items,
            Rolls rolls,
            Copies copies,
            CopyStandings standings,
            PdfPress press,
            Display display,
            Clock clock) {
        this.items = items;
        this.rolls = rolls;
        this.copies = copies;
        this.standings = standings;
        this.press = press;
        this.display = display;
        this.clock = clock;
    }

    record Printed(String itemCode, byte[] pdf) {}

    /** @param size as recorded; null if nobody knows */
    record Line(String rollCode, String day, @Nullable String size, String rendition, String verdict, String checked) {}

    /**
     * @param base the portal's address
     * @throws NotFoundException if this production has no such item, or it can't hold copies
     */
    Printed of(Membership viewer, UUID itemId, String base) {
        UUID production = viewer.productionId();
        MediaItem item = items.get(production, itemId);
        if (!item.kind().holdsCopies()) {
            throw new NotFoundException();
        }
        List<Roll> allRolls = rolls.list(production);
        List<Copy> allCopies = copies.list(production);
        CopyStandings.Standings all = standings.of(production, allRolls, allCopies);
        Map<UUID, Roll> byId = allRolls.stream().collect(Collectors.toMap(Roll::id, Function.identity()));
        List<Copy> here = allCopies.stream()
                .filter(copy -> copy.itemId().equals(itemId) && !copy.isErased())
                .sorted(Comparator.comparing(
                        (Copy copy) -> byId.get(copy.rollId()),
                        Comparator.comparing(LegContents.Day::of, LegContents.Day.BY_DATE)
                                .thenComparing(Roll::code)))
                .toList();
        List<Line> lines = here.stream()
                .map(copy -> line(viewer, byId.get(copy.rollId()), copy, all.of(copy)))
                .toList();
        Map<String, Object> model = new HashMap<>();
        model.put("item", item);
        model.put("kind", display.text("inventory.kind." + item.kind().name()));
        model.put("production", viewer.productionName());
        model.put(
                "leg",
                all.legs().stream()
                        .filter(leg -> leg.id().equals(item.legId()))
                        .map(leg -> leg.name())
                        .findFirst()
                        .orElse(""));
        model.put("capacity", item.capacityBytes() == null ? "" : display.size(item.capacityBytes()));
        model.put("symbol", QrSymbol.of(LabelAddress.of(base, viewer, item.code())));
        model.put("lines", lines);
        model.put("total", display.size(total(here, byId)));
        model.put(
                "unknown",
                here.stream().anyMatch(copy -> byId.get(copy.rollId()).sizeBytes() == null));
        model.put("proven", here.stream().filter(copy -> all.of(copy).proven()).count());
        model.put("printed", display.moment(clock.instant(), viewer.zone()));
        return new Printed(item.code(), press.print("post/contents", model, STYLE));
    }

    private static BigInteger total(List<Copy> here, Map<UUID, Roll> byId) {
        BigInteger sum = BigInteger.ZERO;
        for (Copy copy : here) {
            Long size = byId.get(copy.rollId()).sizeBytes();
            sum = sum.add(BigInteger.valueOf(size == null ? 0 : size));
        }
        return sum;
    }

    private Line line(Membership viewer, Roll roll, Copy copy, CopyStanding standing) {
        return new Line(
                roll.code(),
                display.text("post.sets.day", roll.dayNumber(), roll.unitName(), display.shortDate(roll.dayDate())),
                roll.sizeBytes() == null ? null : display.size(roll.sizeBytes()),
                display.text(
                        copy.rendition() == Rendition.ENCODED ? "post.contents.encoded" : "post.contents.as-recorded"),
                display.text("web.verdict." + display.verdict(standing.verdict())),
                standing.checkedAt() == null ? "" : display.moment(standing.checkedAt(), viewer.zone()));
    }
}
