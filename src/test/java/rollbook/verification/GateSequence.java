package rollbook.verification;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;
import rollbook.verification.GateAct.Kind;
import rollbook.verification.GateRoll.Asked;

/**
 * Acts drawn at random, most of them such as bring the card on, and what the model says of each.
 *
 * @param acts by their number in {@link GateAct#ALL}
 * @param told what is on record after each
 */
record GateSequence(long seed, GatePolicy policy, List<Integer> acts, List<String> told) {
    private static final int LENGTH = 24;
    private static final int LONGEST_BEGINNING = 18;
    private static final double PURPOSE = 0.7;
    private static final Kind[] KINDS = Kind.values();

    static GateSequence random(long seed, GateProof proof) {
        SplittableRandom random = new SplittableRandom(seed);
        GatePolicy policy = GatePolicy.ALL[random.nextInt(GatePolicy.ALL.length)];
        GateModel model = new GateModel(policy, proof);
        List<Integer> acts = new ArrayList<>();
        List<String> told = new ArrayList<>();
        beginning(random).forEach(act -> play(model, act, acts, told));
        while (acts.size() < LENGTH) {
            play(model, random.nextDouble() < PURPOSE ? useful(model, random) : any(model, random), acts, told);
        }
        return new GateSequence(seed, policy, acts, told);
    }

    /** Some begin with a day that goes as days go for a while, so that they come further. */
    private static List<GateAct> beginning(SplittableRandom random) {
        if (random.nextInt(4) > 0) {
            return List.of();
        }
        List<GateAct> day = GateDay.ALL.get(random.nextInt(GateDay.ALL.size()));
        return day.subList(0, random.nextInt(Math.min(day.size(), LONGEST_BEGINNING) + 1));
    }

    private static void play(GateModel model, @Nullable GateAct act, List<Integer> acts, List<String> told) {
        if (act != null && model.possible(act)) {
            acts.add(GateAct.ALL.indexOf(act));
            told.add((model.apply(act) ? "done " : "refused ") + model.told());
        }
    }

    /** Plays it. @return what came out otherwise than the model says, or null if nothing did */
    @Nullable
    String difference(GateStage stage) {
        stage.begin(policy.ordinal());
        try {
            for (int i = 0; i < acts.size(); i++) {
                String expected = told.get(i);
                String found = stage.play(acts.get(i));
                if (!found.equals(expected)) {
                    return "seed %d, %s, after %s%n  expected: %s%n  but was:  %s"
                            .formatted(seed, policy, names(i), expected, found);
                }
            }
            return null;
        } finally {
            stage.end();
        }
    }

    List<String> names(int last) {
        return acts.subList(0, last + 1).stream()
                .map(act -> GateAct.ALL.get(act).toString())
                .toList();
    }

    private static @Nullable GateAct any(GateModel model, SplittableRandom random) {
        Kind kind = KINDS[random.nextInt(KINDS.length)];
        List<GateAct> possible = GateAct.ALL.stream()
                .filter(act -> act.kind() == kind && model.possible(act))
                .toList();
        return possible.isEmpty() ? null : possible.get(random.nextInt(possible.size()));
    }

    /** What somebody would do next who wants to see the card erased, or doubts it afterwards. */
    private static @Nullable GateAct useful(GateModel model, SplittableRandom random) {
        int roll = Math.max(0, model.loadings - 1);
        GateAct waiting = waiting(model);
        if (waiting != null && random.nextInt(4) > 0) {
            return waiting;
        }
        return switch (model.card) {
            case BLANK ->
                model.loadings == 0 || random.nextBoolean()
                        ? GateAct.of(Kind.LOAD, 0)
                        : sent(random, roll, random.nextInt(GateModel.MEDIA), GateModel.OTHER_BYTES);
            case IN_CAMERA -> GateAct.of(Kind.PULL, roll);
            case EXPOSED -> GateAct.startOffload(roll, random.nextBoolean() ? 0b011 : 0b100);
            case COPYING -> GateAct.of(Kind.FINISH_OFFLOAD, roll);
            case HELD -> proof(model.rolls[roll], roll, random);
            case CLEAR_TO_ERASE ->
                model.rolls[roll].withoutProof && random.nextInt(4) == 0
                        ? GateAct.of(Kind.TAKE_BACK, roll)
                        : GateAct.of(Kind.ERASE, random.nextInt(3) == 0 ? 0 : roll);
        };
    }

    /** What waits for a job. */
    private static @Nullable GateAct waiting(GateModel model) {
        for (int roll = 0; roll < model.loadings; roll++) {
            for (int document = 0; document < model.rolls[roll].documents(); document++) {
                if (!model.rolls[roll].read[document]) {
                    return GateAct.read(roll, document);
                }
            }
            if (model.rolls[roll].judgingOrdered) {
                return GateAct.of(Kind.JUDGE, roll);
            }
        }
        return null;
    }

    private static GateAct proof(GateRoll roll, int number, SplittableRandom random) {
        int documents = roll.documents();
        if (roll.asked == Asked.WAITS && random.nextBoolean()) {
            return GateAct.approve(random.nextInt(GateModel.PEOPLE), number);
        }
        if (documents == 0 && random.nextInt(3) == 0) {
            return GateAct.ask(random.nextInt(GateModel.PEOPLE), number);
        }
        if (documents == 0) {
            return sent(random, number, GateModel.CARD, GateModel.WHOLE);
        }
        int medium = random.nextInt(GateModel.MEDIA);
        if (documents < 3 && !describes(roll, medium)) {
            return sent(random, number, medium, GateModel.WHOLE);
        }
        return switch (random.nextInt(4)) {
            case 0 -> sent(random, number, medium, GateModel.WHOLE);
            case 1 -> GateAct.ask(random.nextInt(GateModel.PEOPLE), number);
            default -> GateAct.of(Kind.CLEAR, number);
        };
    }

    /** Most lists come by themselves. */
    private static GateAct sent(SplittableRandom random, int roll, int target, int content) {
        return random.nextInt(3) == 0 ? GateAct.upload(roll, target, content) : GateAct.send(roll, target, content);
    }

    private static boolean describes(GateRoll roll, int medium) {
        for (int document = 0; document < roll.documents(); document++) {
            if (roll.describesCopy(document, medium)) {
                return true;
            }
        }
        return false;
    }
}
