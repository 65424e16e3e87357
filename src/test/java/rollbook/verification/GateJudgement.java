package rollbook.verification;

import rollbook.verification.GateRoll.Judged;

/** What the documents that were read say of a copy, in the few cases that the model's documents can make. */
final class GateJudgement {
    private GateJudgement() {}

    static Judged of(GateRoll roll, int medium) {
        int evidence = evidence(roll, medium);
        int reference = reference(roll);
        if (evidence < 0 || reference < 0) {
            return roll.judged[medium] == Judged.NEVER ? Judged.NEVER : Judged.UNKNOWN;
        }
        Judged difference = difference(roll, reference, roll.content[evidence]);
        return difference == null ? independence(roll, medium, reference, evidence) : difference;
    }

    private static Judged independence(GateRoll roll, int medium, int reference, int evidence) {
        boolean described = roll.describesCard(evidence);
        for (int other = 0; other < GateModel.MEDIA; other++) {
            described |= other != medium && roll.describesCopy(evidence, other);
        }
        if (described) {
            return Judged.CONSISTENT;
        }
        if (roll.describesCard(reference)) {
            return Judged.PROVEN;
        }
        if (reference == evidence) {
            return Judged.REFERENCE_WITHOUT_SOURCE;
        }
        return roll.content[reference] == roll.content[evidence] ? Judged.WITHOUT_SOURCE : Judged.MORE_WITHOUT_SOURCE;
    }

    /** What is wrong with the copy's list, or null if it has whatever the reference has. */
    private static @org.jspecify.annotations.Nullable Judged difference(GateRoll roll, int reference, int list) {
        boolean whole = roll.content[reference] == GateModel.WHOLE;
        boolean otherBytes = roll.content[reference] == GateModel.OTHER_BYTES;
        for (int document = 0; roll.describesCard(reference) && document < roll.documents(); document++) {
            if (roll.read[document] && roll.describesCard(document)) {
                whole |= roll.content[document] == GateModel.WHOLE;
                otherBytes |= roll.content[document] == GateModel.OTHER_BYTES;
            }
        }
        if (whole && otherBytes || whole && list == GateModel.OTHER_BYTES || otherBytes && list == GateModel.WHOLE) {
            return Judged.FAILED;
        }
        return list == GateModel.SHORT && (whole || otherBytes) ? Judged.INCOMPLETE : null;
    }

    private static int evidence(GateRoll roll, int medium) {
        for (int document = roll.documents() - 1; document >= roll.documentsBefore[medium]; document--) {
            if (roll.read[document] && roll.describesCopy(document, medium)) {
                return document;
            }
        }
        return -1;
    }

    /** The first manifest of the card, or without any the first of a copy. */
    private static int reference(GateRoll roll) {
        int first = -1;
        for (int document = roll.documents() - 1; document >= 0; document--) {
            if (roll.read[document] && roll.describesCard(document)) {
                return firstOfCard(roll);
            }
            if (roll.read[document]
                    && (roll.subject[document] < GateModel.MEDIA || roll.added[document] != GateModel.NO_MEDIUM)) {
                first = document;
            }
        }
        return first;
    }

    private static int firstOfCard(GateRoll roll) {
        int document = 0;
        while (!roll.read[document] || !roll.describesCard(document)) {
            document++;
        }
        return document;
    }
}
