package org.restpoint.stability;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.time.Clock;
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZonedDateTime;
import java.util.Random;

/** The science is pure: values in, values out, the same to the last bit on any machine. */
@AnalyzeClasses(
    packages = "org.restpoint.stability",
    importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {

  /** No files ({@code java.io}, {@code java.nio}), network, threads, logging or other modules. */
  @ArchTest
  static final ArchRule itLeansOnALittleOfTheJdkAlone =
      classes()
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage(
              "org.restpoint.stability..",
              "org.jspecify.annotations",
              "java.lang",
              "java.lang.annotation",
              "java.lang.invoke",
              "java.lang.runtime",
              "java.math",
              "java.time",
              "java.time.temporal",
              "java.util",
              "java.util.function",
              "java.util.stream");

  @ArchTest
  static final ArchRule itHasNoClock =
      noClasses()
          .should()
          .dependOnClassesThat()
          .belongToAnyOf(Clock.class, InstantSource.class)
          .orShould()
          .callMethod(Instant.class, "now")
          .orShould()
          .callMethod(LocalDate.class, "now")
          .orShould()
          .callMethod(LocalDateTime.class, "now")
          .orShould()
          .callMethod(ZonedDateTime.class, "now");

  @ArchTest
  static final ArchRule itHasNoThreadTerminalEnvironmentOrChance =
      noClasses()
          .should()
          .dependOnClassesThat()
          .belongToAnyOf(
              System.class,
              Thread.class,
              ThreadLocal.class,
              Runtime.class,
              Process.class,
              Random.class)
          .orShould()
          .callMethod(Math.class, "random");

  /** The machine's language would write its own digits and commas into messages. */
  @ArchTest
  static final ArchRule itsWordsDoNotDependOnTheMachinesLanguage =
      noClasses()
          .should()
          .callMethod(String.class, "format", String.class, Object[].class)
          .orShould()
          .callMethod(String.class, "formatted", Object[].class)
          .orShould()
          .callMethod(String.class, "toLowerCase")
          .orShould()
          .callMethod(String.class, "toUpperCase");

  @ArchTest
  static final ArchRule itsPackagesFormNoCircle =
      slices().matching("org.restpoint.stability.(*)..").should().beFreeOfCycles();
}
