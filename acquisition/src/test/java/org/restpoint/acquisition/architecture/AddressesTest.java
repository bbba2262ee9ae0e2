package org.restpoint.acquisition.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import org.restpoint.adapters.sdi12.Visit;

/** A sensor's address is changed by a person's command, and by nothing that runs by itself. */
@AnalyzeClasses(packages = "org.restpoint", importOptions = DoNotIncludeTests.class)
class AddressesTest {

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
