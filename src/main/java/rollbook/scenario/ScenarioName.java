package rollbook.scenario;

import org.jspecify.annotations.Nullable;

/**
 * The name that a person gives a scenario.
 *
 * @param problem the message of what is wrong with it, or null
 */
record ScenarioName(String text, @Nullable String problem) {
    private static final int LONGEST = 80;

    static ScenarioName of(String typed) {
        String text = typed.strip();
        String problem = text.isEmpty() ? "NotBlank" : text.length() > LONGEST ? "scenario.wrong.name-long" : null;
        return new ScenarioName(text, problem);
    }

    ScenarioName taken() {
        return new ScenarioName(text, "scenario.wrong.name-taken");
    }

    boolean isRight() {
        return problem == null;
    }
}
