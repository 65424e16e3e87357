package rollbook.production;

import java.time.ZoneId;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.people.People;
import rollbook.people.SetupCode;

/** Makes the first account and the first production, once. */
@Service
class SetUp {
    private final SetupCode setupCode;
    private final People people;
    private final Productions productions;

    SetUp(SetupCode setupCode, People people, Productions productions) {
        this.setupCode = setupCode;
        this.people = people;
        this.productions = productions;
    }

    boolean isOpen() {
        return people.isEmpty();
    }

    /** Does all of it or nothing. Of two people with the same code the second waits here, and finds it used up. */
    @Transactional
    Outcome make(SetUpController.SetUpForm form) {
        if (!isOpen()) {
            return Outcome.CLOSED;
        }
        if (!setupCode.use(form.oneTimeCode())) {
            return isOpen() ? Outcome.WRONG_CODE : Outcome.CLOSED;
        }
        UUID person = people.add(form.signInName(), form.displayName(), form.password());
        productions.create(
                form.code(), form.name(), ZoneId.of(form.zone()), form.currency(), person, form.displayName());
        return Outcome.DONE;
    }

    enum Outcome {
        DONE,
        WRONG_CODE,
        CLOSED
    }
}
