package org.restpoint.acquisition.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.core.importer.Location;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import org.restpoint.adapters.sdi12.Visit;

/** A sensor's address is changed by a person's command, and by nothing that runs by itself. */
@AnalyzeClasses(
    packages = "org.restpoint",
    importOptions = {DoNotIncludeTests.class, AddressesTest.NotTestsInAJar.class})
class AddressesTest {

  /** The tests of the adapters come packed in a jar of their own. */
  static final class NotTestsInAJar implements ImportOption {

    @Override
    public boolean includes(Location location) {
      return !location.contains("-tests.jar");
    }
  }

  @ArchTest
  static final ArchRule onlyACommandVisitsABus =
      noClasses()
          .that()
          .resideOutsideOfPackage("org.restpoint.acquisition.command")
          .and()
          .doNotHaveFullyQualifiedName(Visit.class.getName())
          .should()
          .dependOnClassesThat()
          .areAssignableTo(Visit.class);
}
