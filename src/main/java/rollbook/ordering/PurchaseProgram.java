package rollbook.ordering;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.LongStream;
import org.jspecify.annotations.Nullable;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.Variable;
import org.ojalgo.optimisation.integer.IntegerStrategy;

/**
 * The integer program behind a {@link PurchasePlan}: whole packs at least cost, deliveries included, so that every pool has
 * what it needs on every date.
 *
 * <p>The solver counts in fractions and answers 2.9999999 for 3. Its answer is rounded and checked in whole bytes; if it
 * falls short after all, the program is solved again with that need a little higher.
 */
final class PurchaseProgram {
    private static final int ROUNDS = 5;
    private static final double BYTES_PER_UNIT = 1e9;

    /**
     * Packs that may be bought.
     *
     * @param delivery index of the delivery they come in
     * @param usefulFrom the first date on which they help
     */
    record Choice(
            int delivery, int pool, LocalDate usefulFrom, long packBytes, long packPriceMinorUnits, long mostPacks) {}

    /** Bytes a pool must have got in addition by a date. */
    record Need(int pool, LocalDate date, long bytes) {}

    private final List<Choice> choices;
    private final long[] deliveryMinorUnits;
    private final List<Need> needs;

    private PurchaseProgram(List<Choice> choices, long[] deliveryMinorUnits, List<Need> needs) {
        this.choices = choices;
        this.deliveryMinorUnits = deliveryMinorUnits;
        this.needs = needs;
    }

    /**
     * Packs for each choice; null if no numbers of packs are enough.
     *
     * @param deliveryMinorUnits what each delivery costs if anything comes in it
     */
    static long @Nullable [] solve(List<Choice> choices, long[] deliveryMinorUnits, List<Need> needs) {
        PurchaseProgram program = new PurchaseProgram(choices, deliveryMinorUnits, decisive(choices, needs));
        long[] margins = new long[program.needs.size()];
        for (int round = 0; round < ROUNDS; round++) {
            long[] packs = program.solve(margins);
            if (packs == null) {
                return null;
            }
            if (program.raiseMargins(packs, margins)) {
                return packs;
            }
        }
        throw new ArithmeticException("No whole numbers of packs after %d rounds".formatted(ROUNDS));
    }

    /** Of needs that the same choices can meet, the largest. */
    private static List<Need> decisive(List<Choice> choices, List<Need> needs) {
        Map<List<Integer>, Need> largest = new TreeMap<>((a, b) -> Arrays.compare(
                a.stream().mapToInt(Integer::intValue).toArray(),
                b.stream().mapToInt(Integer::intValue).toArray()));
        for (Need need : needs) {
            if (need.bytes() > 0) {
                List<Integer> key = new ArrayList<>(List.of(need.pool()));
                key.addAll(useful(choices, need));
                largest.merge(key, need, (a, b) -> a.bytes() >= b.bytes() ? a : b);
            }
        }
        return List.copyOf(largest.values());
    }

    private static List<Integer> useful(List<Choice> choices, Need need) {
        List<Integer> useful = new ArrayList<>();
        for (int i = 0; i < choices.size(); i++) {
            Choice choice = choices.get(i);
            if (choice.pool() == need.pool() && !choice.usefulFrom().isAfter(need.date())) {
                useful.add(i);
            }
        }
        return useful;
    }

    private long @Nullable [] solve(long[] margins) {
        ExpressionsBasedModel model = new ExpressionsBasedModel();
        // One thread: with several, the same program may be answered by another of several equally cheap plans.
        model.options.integer(IntegerStrategy.newConfigurable().withParallelism(() -> 1));
        List<Variable> deliveries = LongStream.of(deliveryMinorUnits)
                .mapToObj(price -> model.addVariable().binary().weight(price))
                .toList();
        List<Variable> packs = new ArrayList<>();
        for (Choice choice : choices) {
            Variable variable = model.addVariable()
                    .integer()
                    .lower(0)
                    .upper(choice.mostPacks())
                    .weight(choice.packPriceMinorUnits());
            packs.add(variable);
            Expression comes = model.addExpression().upper(0);
            comes.set(variable, 1);
            comes.set(deliveries.get(choice.delivery()), -choice.mostPacks());
        }
        for (int i = 0; i < needs.size(); i++) {
            Expression enough = model.addExpression().lower((needs.get(i).bytes() + margins[i]) / BYTES_PER_UNIT);
            for (int index : useful(choices, needs.get(i))) {
                enough.set(packs.get(index), choices.get(index).packBytes() / BYTES_PER_UNIT);
            }
        }
        Optimisation.Result result = model.minimise();
        if (!result.getState().isFeasible()) {
            return null;
        }
        return packs.stream()
                .mapToLong(variable -> Math.round(variable.getValue().doubleValue()))
                .toArray();
    }

    /** Whether every need is met to the byte; where one isn't, its margin grows by what lacks. */
    private boolean raiseMargins(long[] packs, long[] margins) {
        boolean enough = true;
        for (int i = 0; i < needs.size(); i++) {
            long bytes = 0;
            for (int index : useful(choices, needs.get(i))) {
                bytes = Math.addExact(
                        bytes,
                        Math.multiplyExact(packs[index], choices.get(index).packBytes()));
            }
            long lacking = needs.get(i).bytes() - bytes;
            if (lacking > 0) {
                margins[i] += lacking + (long) BYTES_PER_UNIT;
                enough = false;
            }
        }
        return enough;
    }

    /** What the packs cost with the deliveries they come in. */
    static long costMinorUnits(List<Choice> choices, long[] deliveryMinorUnits, long[] packs) {
        long cost = 0;
        boolean[] used = new boolean[deliveryMinorUnits.length];
        for (int i = 0; i < packs.length; i++) {
            cost = Math.addExact(
                    cost, Math.multiplyExact(packs[i], choices.get(i).packPriceMinorUnits()));
            used[choices.get(i).delivery()] |= packs[i] > 0;
        }
        for (int i = 0; i < used.length; i++) {
            cost = Math.addExact(cost, used[i] ? deliveryMinorUnits[i] : 0);
        }
        return cost;
    }
}
