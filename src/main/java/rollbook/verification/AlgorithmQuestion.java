package rollbook.verification;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.ChecksumAlgorithm;

/**
 * Digests of a document of which only a person can tell the algorithm, and what people said of them.
 *
 * @param digits how many hexadecimal digits they have
 * @param statements newest first
 */
record AlgorithmQuestion(int digits, List<Statement> statements) {

    /** @param algorithm null if the person took back what was said */
    record Statement(long id, int digits, @Nullable ChecksumAlgorithm algorithm, Instant saidAt, String saidByName) {}

    /** What digests of this length may be of, first the one that is assumed while nobody says. */
    public List<ChecksumAlgorithm> choices() {
        return ChecksumAlgorithm.ofHexDigits(digits);
    }

    /** What holds now, or null while nobody says. */
    public @Nullable Statement answer() {
        return statements.isEmpty() || statements.get(0).algorithm() == null ? null : statements.get(0);
    }

    /** The newest statement that a person who looks now has seen, or null. */
    public @Nullable Long newest() {
        return statements.isEmpty() ? null : statements.get(0).id();
    }
}
