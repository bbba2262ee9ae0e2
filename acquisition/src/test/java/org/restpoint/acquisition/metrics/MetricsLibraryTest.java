package org.restpoint.acquisition.metrics;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

@AnalyzeClasses(packages = "org.restpoint.acquisition", importOptions = DoNotIncludeTests.class)
class MetricsLibraryTest {

  @ArchTest
  static final ArchRule theMetricsLibraryAndTheHttpServerStandHereAlone =
      noClasses()
          .that()
          .resideOutsideOfPackage("org.restpoint.acquisition.metrics")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("io.micrometer..", "io.prometheus..", "com.sun.net.httpserver..");

  @ArchTest
  static final ArchRule theLogLibraryStandsInTheLogPackageAlone =
      noClasses()
          .that()
          .resideOutsideOfPackage("org.restpoint.acquisition.log")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("ch.qos.logback..", "org.slf4j.bridge..");
}
