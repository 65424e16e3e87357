package rollbook;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.methods;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.springframework.modulith.core.ApplicationModules;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.PatchMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;

class ModularityTests {
    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("rollbook");

    @Test
    void modulesDependOnlyOnWhatTheyDeclareAndNeverInACircle() {
        ApplicationModules.of(Application.class).verify();
    }

    @Test
    void everyModuleDeclaresItsPurposeAndItsDependencies() throws IOException {
        try (Stream<Path> packages = Files.list(Path.of("src/main/java/rollbook"))) {
            List<Path> modules = packages.filter(Files::isDirectory).toList();
            assertThat(modules).hasSizeGreaterThan(8);
            for (Path module : modules) {
                assertThat(Files.readString(module.resolve("package-info.java")))
                        .as("%s", module)
                        .contains("/**", "@NullMarked", "allowedDependencies");
            }
        }
    }

    @Test
    void controllersArePackagePrivate() {
        classes()
                .that()
                .haveSimpleNameEndingWith("Controller")
                .should()
                .bePackagePrivate()
                .check(CLASSES);
    }

    @Test
    void whoeverChangesSomethingInAProductionIsNamed() {
        methods()
                .that()
                .areAnnotatedWith(PostMapping.class)
                .or()
                .areAnnotatedWith(PutMapping.class)
                .or()
                .areAnnotatedWith(PatchMapping.class)
                .or()
                .areAnnotatedWith(DeleteMapping.class)
                .and()
                .haveRawParameterTypes(new com.tngtech.archunit.base.DescribedPredicate<>("a membership among them") {
                    @Override
                    public boolean test(List<com.tngtech.archunit.core.domain.JavaClass> types) {
                        return types.stream().anyMatch(type -> type.isEquivalentTo(Membership.class));
                    }
                })
                .should()
                .beAnnotatedWith(AllowedFor.class)
                .check(CLASSES);
    }
}
