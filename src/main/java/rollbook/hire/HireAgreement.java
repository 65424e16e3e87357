package rollbook.hire;

import java.util.List;
import java.util.UUID;

/** @param number counted from one within the production */
record HireAgreement(UUID id, int number, TermsHistory terms) {
    static final String PREFIX = "HIRE-";

    public String code() {
        return code(number);
    }

    static String code(int number) {
        return PREFIX + number;
    }

    public String supplier() {
        return terms.newest().supplier();
    }

    /** What a person who writes to it must have seen. */
    int entries() {
        return terms.entered().size();
    }

    /** Entries, newest first. */
    List<TermsEntry> history() {
        return terms.entered().stream()
                .sorted((one, other) -> Integer.compare(other.number(), one.number()))
                .toList();
    }
}
