package org.restpoint.config;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

@AnalyzeClasses(
    packages = "org.restpoint.config",
    importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {

  @ArchTest
  static final ArchRule configNeedsTheJdkAndOneYamlParser =
      classes()
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage(
              "org.restpoint.config..", "java..", "org.snakeyaml.engine..", "org.jspecify..");

  @ArchTest
  static final ArchRule theYamlParserStaysInOnePackage =
      classes()
          .that()
          .resideOutsideOfPackage("org.restpoint.config.file")
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage("org.restpoint.config..", "java..", "org.jspecify..");

  @ArchTest
  static final ArchRule packagesFormNoCircle =
      slices().matching("org.restpoint.config.(*)..").should().beFreeOfCycles();
}
