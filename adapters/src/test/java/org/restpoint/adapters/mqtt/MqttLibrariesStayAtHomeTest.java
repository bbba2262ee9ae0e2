package org.restpoint.adapters.mqtt;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** The MQTT client and the broker inside are each known to one package. */
@AnalyzeClasses(packages = "org.restpoint")
class MqttLibrariesStayAtHomeTest {

  @ArchTest
  static final ArchRule THE_CLIENT_STAYS_IN_ITS_PACKAGE =
      noClasses()
          .that()
          .resideOutsideOfPackage("org.restpoint.adapters.mqtt")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("org.eclipse.paho..");

  @ArchTest
  static final ArchRule THE_BROKER_STAYS_IN_ITS_PACKAGE =
      noClasses()
          .that()
          .resideOutsideOfPackage("org.restpoint.adapters.broker")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("io.moquette..", "io.netty..");
}
