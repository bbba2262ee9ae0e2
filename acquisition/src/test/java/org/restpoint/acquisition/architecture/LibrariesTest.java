package org.restpoint.acquisition.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** Each heavy library stands in one package of the service. */
@AnalyzeClasses(packages = "org.restpoint.acquisition", importOptions = DoNotIncludeTests.class)
class LibrariesTest {

  @ArchTest
  static final ArchRule theMetricsLibraryAndTheHttpServerStandInMetricsAlone =
      only("metrics", "io.micrometer..", "io.prometheus..", "com.sun.net.httpserver..");

  @ArchTest
  static final ArchRule theLogLibraryStandsInLogAlone =
      only("log", "ch.qos.logback..", "org.slf4j.bridge..");

  @ArchTest
  static final ArchRule theCsvLibraryStandsInRecordsAlone = only("records", "de.siegmar.fastcsv..");

  @ArchTest
  static final ArchRule theCommandLineLibraryStandsInCommandAlone =
      noClasses()
          .that()
          .resideOutsideOfPackages("org.restpoint.acquisition", "org.restpoint.acquisition.command")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("picocli..");

  @ArchTest
  static final ArchRule theDevicesLibrariesStandInTheAdaptersAlone =
      noClasses()
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "com.fazecast..",
              "org.eclipse.paho..",
              "io.moquette..",
              "io.netty..",
              "org.sqlite..",
              "java.sql..");

  private static ArchRule only(String home, String... library) {
    return noClasses()
        .that()
        .resideOutsideOfPackage("org.restpoint.acquisition." + home)
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(library);
  }
}
