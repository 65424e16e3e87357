package rollbook.database;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;

/** The embedded database can't be had; says why and what to do. */
final class EmbeddedDatabaseFailure extends RuntimeException {
    private final String action;

    private EmbeddedDatabaseFailure(String message, String action, @Nullable Throwable cause) {
        super(message, cause);
        this.action = action;
    }

    static EmbeddedDatabaseFailure inUse(Path folder) {
        return new EmbeddedDatabaseFailure(
                "Another Rollbook is running on the data folder " + folder + ".",
                "Stop the other one, or name another folder with rollbook.data=FOLDER. To run several instances beside"
                        + " each other, give all of them one PostgreSQL server with spring.datasource.url.",
                null);
    }

    static EmbeddedDatabaseFailure notStarted(Path folder, Exception cause) {
        return new EmbeddedDatabaseFailure(
                "The embedded PostgreSQL on the data folder " + folder + " could not be started: " + cause.getMessage(),
                "Look at the newest file in " + folder.resolve("postgresql").resolve("log")
                        + ". Where this machine can't run the embedded server (it may not start as root where user"
                        + " namespaces are forbidden), set spring.datasource.url to a PostgreSQL 15 or later.",
                cause);
    }

    static final class Analyzer extends AbstractFailureAnalyzer<EmbeddedDatabaseFailure> {
        @Override
        protected FailureAnalysis analyze(Throwable rootFailure, EmbeddedDatabaseFailure cause) {
            return new FailureAnalysis(String.valueOf(cause.getMessage()), cause.action, cause);
        }
    }
}
