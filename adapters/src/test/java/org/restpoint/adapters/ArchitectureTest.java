package org.restpoint.adapters;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** Each heavy library is known to one package: taking an adapter out is taking a folder out. */
@AnalyzeClasses(
    packages = "org.restpoint.adapters",
    importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {

  @ArchTest
  static final ArchRule theSerialLibraryStaysInItsPackage = only("serial", "com.fazecast..");

  @ArchTest
  static final ArchRule theMqttClientStaysInItsPackage = only("mqtt", "org.eclipse.paho..");

  @ArchTest
  static final ArchRule jsonIsReadFromMessagesAlone = only("mqtt", "com.fasterxml.jackson..");

  @ArchTest
  static final ArchRule theBrokerStaysInItsPackage = only("broker", "io.moquette..", "io.netty..");

  @ArchTest
  static final ArchRule theDatabaseStaysInItsPackage =
      only("journal", "org.sqlite..", "java.sql..", "javax.sql..");

  @ArchTest
  static final ArchRule theCsvLibraryStaysInItsPackage = only("recording", "de.siegmar.fastcsv..");

  @ArchTest
  static final ArchRule adaptersNeedStabilityAndTheirLibrariesAlone =
      classes()
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage(
              "org.restpoint.adapters..",
              "org.restpoint.stability..",
              "java..",
              "javax.net..",
              "org.jspecify..",
              "org.slf4j..",
              "com.fazecast..",
              "org.eclipse.paho..",
              "com.fasterxml.jackson..",
              "io.moquette..",
              "org.sqlite..",
              "de.siegmar.fastcsv..");

  @ArchTest
  static final ArchRule packagesFormNoCircle =
      slices().matching("org.restpoint.adapters.(*)..").should().beFreeOfCycles();

  private static ArchRule only(String home, String... library) {
    return noClasses()
        .that()
        .resideOutsideOfPackage("org.restpoint.adapters." + home)
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(library);
  }
}
