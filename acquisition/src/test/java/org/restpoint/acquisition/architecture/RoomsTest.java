package org.restpoint.acquisition.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.core.importer.Location;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import org.restpoint.adapters.sdi12.Visit;

/** The four rooms of the project: acquisition to adapters to stability, acquisition to config. */
@AnalyzeClasses(
    packages = "org.restpoint",
    importOptions = {DoNotIncludeTests.class, RoomsTest.NotTestsInAJar.class})
class RoomsTest {

  /** The tests of the adapters come packed in a jar of their own. */
  static final class NotTestsInAJar implements ImportOption {

    @Override
    public boolean includes(Location location) {
      return !location.contains("-tests.jar");
    }
  }

  @ArchTest
  static final ArchRule importsRunOneWay =
      layeredArchitecture()
          .consideringOnlyDependenciesInAnyPackage("org.restpoint..")
          .layer("acquisition")
          .definedBy("org.restpoint.acquisition..")
          .layer("adapters")
          .definedBy("org.restpoint.adapters..")
          .layer("stability")
          .definedBy("org.restpoint.stability..")
          .layer("config")
          .definedBy("org.restpoint.config..")
          .whereLayer("acquisition")
          .mayOnlyAccessLayers("adapters", "stability", "config")
          .whereLayer("adapters")
          .mayOnlyAccessLayers("stability")
          .whereLayer("stability")
          .mayNotAccessAnyLayer()
          .whereLayer("config")
          .mayNotAccessAnyLayer()
          .ensureAllClassesAreContainedInArchitecture();

  @ArchTest
  static final ArchRule packagesOfTheServiceFormNoCircle =
      slices().matching("org.restpoint.acquisition.(*)..").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule aSensorsAddressIsChangedByAPersonsCommandAlone =
      noClasses()
          .that()
          .resideOutsideOfPackage("org.restpoint.acquisition.command")
          .and()
          .doNotHaveFullyQualifiedName(Visit.class.getName())
          .should()
          .dependOnClassesThat()
          .areAssignableTo(Visit.class);
}
