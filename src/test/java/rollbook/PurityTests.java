package rollbook;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.methods;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaCall;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.Set;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * Pure computation: records in, records out; no framework, no database, no clock and no chance of its own. And money is
 * exact everywhere.
 */
class PurityTests {
    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("rollbook");

    /** In modules that also have a database and pages, the classes that compute. */
    private static final Set<String> PURE_CLASSES = Set.of(
            "rollbook.offload.Candidate",
            "rollbook.offload.Estimates",
            "rollbook.offload.RecordedMinutes",
            "rollbook.offload.ReportedBytes",
            "rollbook.offload.ReductionHabit",
            "rollbook.offload.RollCodes",
            "rollbook.inventory.CodeNumbering",
            "rollbook.inventory.CustodyTrail",
            "rollbook.purchase.SerialLines",
            "rollbook.calendar.CalendarText",
            "rollbook.calendar.Entry",
            "rollbook.hire.Candidates",
            "rollbook.hire.HireCost",
            "rollbook.hire.HireTerms",
            "rollbook.hire.Hired",
            "rollbook.hire.TermsHistory",
            "rollbook.label.SheetGrid",
            "rollbook.label.SheetKind",
            "rollbook.label.LabelLayout",
            "rollbook.label.SheetStyle",
            "rollbook.label.QrSymbol",
            "rollbook.label.CodeList",
            "rollbook.verification.ChunkPacking",
            "rollbook.verification.ClearingGate",
            "rollbook.verification.DocumentNote",
            "rollbook.verification.EvidenceChoice",
            "rollbook.verification.IntegrityLevels",
            "rollbook.verification.MediumProof",
            "rollbook.verification.Proof",
            "rollbook.verification.ProofStrips",
            "rollbook.verification.SafetyLevel",
            "rollbook.verification.StorageLevels",
            "rollbook.verification.RecheckPlan",
            "rollbook.verification.RecheckSchedule",
            "rollbook.verification.CopyAgain",
            "rollbook.verification.DifferenceFold",
            "rollbook.verification.GoodVersions",
            "rollbook.verification.LogChecks",
            "rollbook.verification.MediumGuess",
            "rollbook.verification.VerdictHistory",
            "rollbook.forecast.SimulatedForecast",
            "rollbook.forecast.RecordingOutlook",
            "rollbook.forecast.TrackRecord",
            "rollbook.forecast.PlanChanges",
            "rollbook.forecast.TypicalRoll",
            "rollbook.forecast.BurnDown",
            "rollbook.forecast.BurnDownChart",
            "rollbook.forecast.CoverGauge",
            "rollbook.forecast.Reduction",
            "rollbook.report.Fact",
            "rollbook.report.FactChange",
            "rollbook.report.FanPicture",
            "rollbook.report.ProofFacts",
            "rollbook.scenario.Beginning",
            "rollbook.scenario.DayPlans",
            "rollbook.scenario.DayTime",
            "rollbook.scenario.FigureKind",
            "rollbook.scenario.ProposalLines",
            "rollbook.scenario.Sheet",
            "rollbook.scenario.SheetChecks",
            "rollbook.scenario.Stretch",
            "rollbook.scenario.Tries",
            "rollbook.scenario.WorkHours",
            "rollbook.schedule.BarsChart",
            "rollbook.schedule.DayBar",
            "rollbook.schedule.UnitBars",
            "rollbook.supplier.PriceHistory",
            "rollbook.supplier.Punctuality");

    private static final DescribedPredicate<JavaClass> PURE = new DescribedPredicate<>("pure") {
        @Override
        public boolean test(JavaClass type) {
            String name = type.getName();
            return !type.getSimpleName().equals("package-info")
                    && (name.startsWith("rollbook.quantity.")
                            || name.startsWith("rollbook.recording.")
                            || name.startsWith("rollbook.picture.")
                            || name.startsWith("rollbook.ordering.")
                            || name.startsWith("rollbook.manifest.")
                            || name.startsWith("rollbook.learning.")
                            || name.startsWith("rollbook.burndown.")
                            || name.startsWith("rollbook.turnaround.")
                            || PURE_CLASSES.contains(name.contains("$") ? name.substring(0, name.indexOf('$')) : name));
        }
    };

    @Test
    void pureCodeKnowsNoFrameworkAndNoDatabase() {
        noClasses()
                .that(PURE)
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        "org.springframework..",
                        "jakarta..",
                        "java.sql..",
                        "javax.sql..",
                        "org.postgresql..",
                        "com.github.kagkarlsson..",
                        "rollbook.web..")
                .check(CLASSES);
    }

    @Test
    void pureCodeHasNoClockAndNoChanceOfItsOwn() {
        noClasses()
                .that(PURE)
                .should()
                .callMethodWhere(new DescribedPredicate<JavaCall<?>>("asks for the time or for chance") {
                    @Override
                    public boolean test(JavaCall<?> call) {
                        String owner = call.getTargetOwner().getName();
                        boolean now = call.getName().equals("now")
                                || call.getName().equals("currentTimeMillis")
                                || call.getName().equals("nanoTime");
                        boolean chance =
                                owner.equals("java.lang.Math") && call.getName().equals("random")
                                        || owner.equals("java.util.UUID")
                                                && call.getName().equals("randomUUID");
                        return now && owner.startsWith("java.") || chance;
                    }
                })
                .check(CLASSES);
    }

    private static final Pattern MONEY = Pattern.compile("(?i).*(price|cost|money|minorUnits).*");
    private static final Set<String> FLOATING = Set.of("double", "float", "java.lang.Double", "java.lang.Float");

    @Test
    void moneyIsNeverFloating() {
        fields().that()
                .haveNameMatching(MONEY.pattern())
                .should(new ArchCondition<JavaField>("be whole or decimal numbers") {
                    @Override
                    public void check(JavaField field, ConditionEvents events) {
                        addUnlessExact(field.getFullName(), field.getRawType(), events);
                    }
                })
                .check(CLASSES);
        methods()
                .that()
                .haveNameMatching(MONEY.pattern())
                .should(new ArchCondition<JavaMethod>("take and return whole or decimal numbers") {
                    @Override
                    public void check(JavaMethod method, ConditionEvents events) {
                        addUnlessExact(method.getFullName(), method.getRawReturnType(), events);
                        method.getRawParameterTypes()
                                .forEach(type -> addUnlessExact(method.getFullName(), type, events));
                    }
                })
                .check(CLASSES);
    }

    private static void addUnlessExact(String name, JavaClass type, ConditionEvents events) {
        String component = type.getBaseComponentType().getName();
        if (FLOATING.contains(component)) {
            events.add(SimpleConditionEvent.violated(type, name + " is " + component));
        }
    }

    @Test
    void theClassesNamedPureExist() {
        for (String name : PURE_CLASSES) {
            CLASSES.get(name);
        }
    }
}
