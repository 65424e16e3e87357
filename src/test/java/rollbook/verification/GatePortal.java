package rollbook.verification;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DataAccessException;
import org.springframework.dao.PessimisticLockingFailureException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;
import rollbook.inventory.Custody;
import rollbook.offload.Offloads;
import rollbook.offload.Rolls;
import rollbook.production.CopyPlan;
import rollbook.production.Leg;
import rollbook.production.MediaKind;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.TestProduction;
import rollbook.web.Refusal;

/** Does what the model does in the portal, through its services, and reads from the database what came of it. */
final class GatePortal implements GateStage {
    private static final int CARDS_A_PRODUCTION = 20;
    private static final String ONE = "d41d8cd98f00b204e9800998ecf8427e  %s/Clips/%1$sC001.mxf%n";
    private static final String OTHER = "900150983cd24fb0d6963f7d28e17f7%d  %s/Clips/%2$sC002.mxf%n";

    private final Fixtures fixtures;
    private final Documents documents;
    private final DocumentReader reader;
    private final Assignments assignments;
    private final RollJudge judge;
    private final Unjudged unjudged;
    private final Clearances clearances;
    private final Overrides overrides;
    private final Rolls rolls;
    private final Offloads offloads;
    private final Custody custody;
    private final CopyPlan plan;
    private final TransactionTemplate transaction;
    private final JdbcClient jdbc;
    private final GateRecord record;

    private @Nullable Scene scene;
    private int cards;
    private final AtomicInteger lists = new AtomicInteger();
    private final List<UUID> rollIds = new ArrayList<>();
    private final List<List<Sent>> sent = new ArrayList<>();
    private final List<UUID> media = new ArrayList<>();
    private final View[] views = new View[GateModel.PEOPLE];
    private UUID card = new UUID(0, 0);
    private GatePolicy policy = GatePolicy.TWO_COPIES;

    GatePortal(
            Fixtures fixtures,
            Documents documents,
            DocumentReader reader,
            Assignments assignments,
            RollJudge judge,
            Unjudged unjudged,
            Clearances clearances,
            Overrides overrides,
            Rolls rolls,
            Offloads offloads,
            Custody custody,
            CopyPlan plan,
            TransactionTemplate transaction,
            JdbcClient jdbc) {
        this.fixtures = fixtures;
        this.documents = documents;
        this.reader = reader;
        this.assignments = assignments;
        this.judge = judge;
        this.unjudged = unjudged;
        this.clearances = clearances;
        this.overrides = overrides;
        this.rolls = rolls;
        this.offloads = offloads;
        this.custody = custody;
        this.plan = plan;
        this.transaction = transaction;
        this.jdbc = jdbc;
        this.record = new GateRecord(jdbc);
    }

    /** What several cards share. */
    private record Scene(
            TestProduction production,
            UUID set,
            UUID vault,
            UUID camera,
            UUID day,
            UUID format,
            UUID readerItem,
            UUID leg) {
        static Scene in(TestProduction production) {
            UUID set = production.place("Set", false);
            UUID unit = production.unit("Main");
            return new Scene(
                    production,
                    set,
                    production.place("Vault", true),
                    production.camera(unit, "A"),
                    production.day(unit, 1, "SHOOTING"),
                    production.format("F"),
                    production.item("READER", "READER", set, null),
                    production.leg("Needed", set, false));
        }
    }

    /** A document that was sent, and which of its assignments says that it describes a copy besides. */
    private static final class Sent {
        private UUID documentId;
        private @Nullable Long addition;

        Sent(UUID documentId) {
            this.documentId = documentId;
        }
    }

    /** What a person saw on a document's page. */
    private record View(int roll, Sent document, UUID partId, long newest, long said) {}

    @Override
    public void begin(int policyNumber) {
        if (cards % CARDS_A_PRODUCTION == 0) {
            scene = Scene.in(fixtures.production());
        }
        cards++;
        rollIds.clear();
        sent.clear();
        media.clear();
        views[0] = null;
        views[1] = null;
        policy = GatePolicy.ALL[policyNumber];
        card = UUID.randomUUID();
        media.addAll(List.of(UUID.randomUUID(), UUID.randomUUID(), UUID.randomUUID()));
        jdbc.sql("""
                        with added (id, code, kind, place_id, leg_id, card_state) as (values
                            (:card, 'CARD-' || :number, 'CARD', :set, null, 'BLANK'),
                            (:drive, 'DRIVE-' || :number || '-0', 'DRIVE', :set, null, null),
                            (:other, 'DRIVE-' || :number || '-1', 'DRIVE', :set, :leg, null),
                            (:tape, 'TAPE-' || :number, 'TAPE', :vault, null, null)),
                        ruled as (
                            update production_clearing_policy set proven_copies = :copies, items = :items, media_kinds = :kinds,
                                places = :places, off_site = :offSite, source_hash_needed = :sourceNeeded
                            where production_id = :production and subject = 'CARD'),
                        planned as (update production_leg set needed_to_clear = :needed where id = :leg)
                        insert into inventory_item (id, production_id, code, kind, model, capacity_bytes, ownership, place_id,
                            condition, card_state, created_at, leg_id)
                        select id, :production, code, kind, 'test model', 1000000000000, 'BOUGHT', place_id, 'GOOD', card_state, now(), leg_id
                        from added
                        """)
                .param("card", card)
                .param("drive", media.get(0))
                .param("other", media.get(1))
                .param("tape", media.get(2))
                .param("number", Integer.toString(cards))
                .param("set", scene().set())
                .param("vault", scene().vault())
                .param("leg", scene().leg())
                .param("production", scene().production().id)
                .param("copies", policy.copies)
                .param("items", policy.items)
                .param("kinds", policy.kinds)
                .param("places", policy.places)
                .param("offSite", policy.offSite)
                .param("sourceNeeded", policy.sourceNeeded)
                .param("needed", policy.neededMedium >= 0)
                .update();
    }

    @Override
    public String play(int act) {
        return outcome(GateAct.ALL.get(act)) + " " + told();
    }

    String outcome(GateAct act) {
        try {
            play(act);
            return "done";
        } catch (Refusal | PessimisticLockingFailureException refused) {
            return "refused";
        } catch (DataAccessException broken) {
            return "broken: " + broken;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    String told() {
        return record.told(card, media);
    }

    @Override
    public void end() {
        for (UUID roll : rollIds) {
            jdbc.sql("delete from scheduled_tasks where task_name = 'judge-roll' and task_instance like ?")
                    .param(scene().production().id + "/" + roll + "/%")
                    .update();
        }
        for (List<Sent> ofRoll : sent) {
            for (Sent document : ofRoll) {
                reader.rejectForFault(document.documentId);
                forgetReading(document.documentId);
            }
        }
    }

    private void play(GateAct act) throws IOException {
        switch (act.kind()) {
            case UPLOAD -> store(act, packed(list(act)), "list.zip");
            case SEND -> store(act, list(act), "list.md5");
            case READ -> read(sent.get(act.roll()).get(act.document()));
            case JUDGE -> judge(roll(act));
            case LOOK -> look(act);
            case CORRECT -> correct(act);
            case ADD -> add(act);
            case CLEAR -> clearances.clear(wrangler(), roll(act), code());
            case ASK -> overrides.request(person(act), roll(act), "There is no other card left for tomorrow.");
            case APPROVE -> overrides.approve(person(act), newestRequest(act), code());
            case TAKE_BACK -> overrides.withdraw(wrangler(), newestRequest(act), "A card was found.");
            case ERASE -> clearances.recordErasure(wrangler(), roll(act), code());
            case LOAD -> load();
            case PULL -> rolls.pull(wrangler(), roll(act), BigDecimal.TEN);
            case START_OFFLOAD -> startOffload(act);
            case FINISH_OFFLOAD -> finishOffload(roll(act));
            case QUARANTINE -> custody.quarantine(wrangler(), media.get(act.target()), "it fell");
            case RELEASE -> custody.release(wrangler(), media.get(act.target()), "it works");
            case LOSE -> custody.reportLost(wrangler(), media.get(act.target()), "not in the van");
            case FIND ->
                custody.reportFound(wrangler(), media.get(act.target()), placeOf(act.target()), "", "in the other van");
            case CHANGE_POLICY -> {
                policy = policy.next();
                setPolicy();
            }
        }
    }

    private void store(GateAct act, byte[] bytes, String name) throws IOException {
        boolean ofCard = act.target() == GateModel.CARD;
        sent.get(act.roll())
                .add(new Sent(documents
                        .store(
                                wrangler(),
                                name,
                                new ByteArrayInputStream(bytes),
                                ofCard ? Subject.CARD : Subject.COPY,
                                ofCard ? null : media.get(act.target()))
                        .documentId()));
    }

    /** A comment with its number makes each list a document of its own. */
    private byte[] list(GateAct act) {
        String code = rollCode(act.roll());
        String list = "# %d%n".formatted(lists.incrementAndGet()) + ONE.formatted(code);
        String whole = switch (act.content()) {
            case GateModel.WHOLE -> list + OTHER.formatted(2, code);
            case GateModel.OTHER_BYTES -> list + OTHER.formatted(3, code);
            default -> list;
        };
        return whole.getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] packed(byte[] list) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            zip.putNextEntry(new ZipEntry("list.md5"));
            zip.write(list);
        }
        return bytes.toByteArray();
    }

    /** As the jobs do it: they open the archive, and then read what was in it. */
    private void read(Sent archive) throws IOException {
        reader.read(archive.documentId);
        UUID list = jdbc.sql("select member_id from verification_archive_member where archive_id = ?")
                .param(archive.documentId)
                .query(UUID.class)
                .single();
        reader.read(list);
        forgetReading(archive.documentId);
        archive.documentId = list;
    }

    private void forgetReading(UUID document) {
        jdbc.sql("delete from scheduled_tasks where task_name = 'read-document' and task_instance = ?")
                .param(document.toString())
                .update();
    }

    /** As the jobs do it, but once for all orders that are there. */
    private void judge(UUID roll) {
        List<String> orders = jdbc.sql(
                        "select task_instance from scheduled_tasks where task_name = 'judge-roll' and task_instance like ?")
                .param(scene().production().id + "/" + roll + "/%")
                .query(String.class)
                .list();
        transaction.executeWithoutResult(status -> {
            try {
                judge.judge(scene().production().id, roll);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
            orders.forEach(unjudged::carriedOut);
        });
        jdbc.sql("delete from scheduled_tasks where task_name = 'judge-roll' and task_instance in (:orders)")
                .param("orders", orders)
                .update();
    }

    private void look(GateAct act) {
        Sent document = sent.get(act.roll()).get(act.document());
        List<Assignment> all = assignments.ofDocument(scene().production().id, document.documentId);
        Assignment said = all.stream()
                .filter(assignment -> !assignment.replaced())
                .filter(assignment -> document.addition == null || assignment.id() != document.addition)
                .findFirst()
                .orElseThrow();
        views[act.person()] = new View(
                act.roll(), document, said.partId(), all.get(all.size() - 1).id(), said.id());
    }

    private void correct(GateAct act) {
        View view = views[act.person()];
        Subject subject = act.target() == GateModel.CARD
                ? Subject.CARD
                : act.target() == GateModel.NOTHING ? Subject.NOT_A_ROLL : Subject.COPY;
        assignments.assign(
                person(act),
                view.partId(),
                new Assignments.Statement(
                        subject,
                        subject == Subject.NOT_A_ROLL ? null : rollIds.get(view.roll()),
                        subject == Subject.COPY ? media.get(act.target()) : null,
                        view.said(),
                        "mixed up"),
                view.newest());
    }

    private void add(GateAct act) {
        View view = views[act.person()];
        assignments.assign(
                person(act),
                view.partId(),
                new Assignments.Statement(
                        Subject.COPY, rollIds.get(view.roll()), media.get(act.target()), null, "of both"),
                view.newest());
        List<Assignment> all = assignments.ofDocument(scene().production().id, view.document().documentId);
        view.document().addition = all.get(all.size() - 1).id();
    }

    private void load() {
        rollIds.add(rolls.load(
                wrangler(), rollCode(rollIds.size()), scene().camera(), scene().day(), card, scene().format()));
        sent.add(Collections.synchronizedList(new ArrayList<>()));
    }

    private void startOffload(GateAct act) {
        List<Offloads.Destination> destinations = new ArrayList<>();
        for (int medium = 0; medium < GateModel.MEDIA; medium++) {
            if ((act.target() & 1 << medium) != 0) {
                destinations.add(new Offloads.Destination(
                        media.get(medium), medium == GatePolicy.LEG.neededMedium ? scene().leg() : null));
            }
        }
        offloads.start(wrangler(), roll(act), scene().readerItem(), null, destinations);
    }

    private void finishOffload(UUID roll) {
        UUID session = offloads.ofRoll(scene().production().id, roll).stream()
                .filter(offload -> offload.endedAt() == null)
                .findFirst()
                .orElseThrow(() -> new Refusal("offload.refused.ended-already", ""))
                .id();
        offloads.finish(wrangler(), session, 1_000);
    }

    private void setPolicy() {
        UUID production = scene().production().id;
        Membership administrator = scene().production().as(Role.ADMINISTRATOR);
        transaction.executeWithoutResult(status -> {
            plan.changePolicy(
                    administrator,
                    policy.ofCards(plan.rules(production).policy(MediaKind.CARD).version()));
            Leg leg = plan.leg(production, scene().leg());
            plan.changeLeg(
                    administrator,
                    new Leg(
                            leg.id(),
                            leg.name(),
                            leg.mediaKind(),
                            leg.placeId(),
                            leg.placeName(),
                            leg.rendition(),
                            leg.keptPercent(),
                            leg.returnsAfterDays(),
                            policy.neededMedium >= 0,
                            leg.version()));
        });
    }

    private UUID newestRequest(GateAct act) {
        return overrides.ofRoll(scene().production().id, roll(act)).get(0).requestId();
    }

    private UUID placeOf(int medium) {
        return medium == GateModel.TAPE ? scene().vault() : scene().set();
    }

    private String code() {
        return "card-" + cards;
    }

    private String rollCode(int roll) {
        return "R%03d%s".formatted(cards, roll == 0 ? "A" : "B");
    }

    private UUID roll(GateAct act) {
        return rollIds.get(act.roll());
    }

    private Membership wrangler() {
        return scene().production().as(Role.WRANGLER);
    }

    /** Two who may both ask and approve. */
    private Membership person(GateAct act) {
        return scene().production().as(act.person() == 0 ? Role.POST : Role.ADMINISTRATOR);
    }

    private Scene scene() {
        if (scene == null) {
            throw new IllegalStateException("nothing has begun");
        }
        return scene;
    }
}
