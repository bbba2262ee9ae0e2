package org.restpoint.adapters.sdi12;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.link.CollectingListener;
import org.restpoint.adapters.link.Eventually;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkCounts;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.adapters.quantity.Meaning;
import org.restpoint.adapters.quantity.PotentialScale;
import org.restpoint.adapters.quantity.TemperatureScale;
import org.restpoint.adapters.sdi12.Measurement.Kind;
import org.restpoint.adapters.serial.PortSettings;
import org.restpoint.adapters.serial.SerialWireSource;
import org.restpoint.stability.reading.Reading;

/** Two sensors on one bus behind a real terminal, and what can go wrong between. */
@EnabledOnOs(OS.LINUX)
@Timeout(120)
class Sdi12BusTest {

  @TempDir private Path folder;
  private final List<Link> links = new ArrayList<>();
  private final CollectingListener nitrate = new CollectingListener();
  private final CollectingListener chloride = new CollectingListener();
  private final CollectingListener other = new CollectingListener();
  private SimulatedConverter converter;
  private SimulatedSensor twin;
  private SimulatedSensor single;

  @BeforeEach
  void wire() {
    converter = new SimulatedConverter(folder.resolve("converter"));
    twin = converter.sensor('0', 187.4, 21.5, -12);
    single = converter.sensor('b', 5.25);
    Sdi12Bus bus =
        new Sdi12Bus(
            new SerialWireSource(
                PortSettings.plain(folder.resolve("converter").toString(), 9600),
                folder.resolve("native")),
            InstantSource.system(),
            System::nanoTime);
    Measurement first = new Measurement(Kind.ALONE, 0, true);
    links.add(bus.link(settings('0', first, 1, OptionalInt.of(2)), nitrate));
    links.add(bus.link(settings('0', first, 3, OptionalInt.empty()), chloride));
    Measurement continuous = new Measurement(Kind.CONTINUOUS, 0, false);
    links.add(bus.link(settings('b', continuous, 1, OptionalInt.empty()), other));
  }

  private static Sdi12Settings settings(
      char address, Measurement measurement, int millivolts, OptionalInt celsius) {
    return new Sdi12Settings(
        new SensorAddress(address),
        measurement,
        new Meaning(
            Optional.of(PotentialScale.MILLIVOLTS),
            celsius.isPresent() ? Optional.of(TemperatureScale.CELSIUS) : Optional.empty()),
        OptionalInt.of(millivolts),
        celsius,
        Duration.ofMillis(300),
        Duration.ofMillis(200),
        1,
        Duration.ofSeconds(2));
  }

  @AfterEach
  void close() {
    links.forEach(Link::close);
    converter.close();
  }

  private void start() throws InterruptedException {
    converter.plug();
    links.forEach(Link::start);
    Reading first = nitrate.nextReading();
    assertThat(first.millivolts()).hasValue(187.4);
    assertThat(first.celsius()).hasValue(21.5);
    assertThat(chloride.nextReading().millivolts()).hasValue(-12);
    assertThat(other.nextReading().millivolts()).hasValue(5.25);
  }

  private static Reading reads(CollectingListener heard, double millivolts) {
    Reading reading = heard.nextReading();
    while (reading.millivolts().orElseThrow() != millivolts) {
      reading = heard.nextReading();
    }
    return reading;
  }

  @Test
  void sensorsAreReadTogetherThoughTheConverterEchoesAndOneTakesItsTime() throws Exception {
    converter.echoes();
    twin.takes(1, Optional.of(Duration.ofMillis(30)));
    start();
    twin.measures(190, 22, -13);
    single.measures(6);
    assertThat(reads(nitrate, 190).celsius()).hasValue(22);
    reads(chloride, -13);
    reads(other, 6);
    assertThat(links).allSatisfy(link -> assertThat(link.counts().rejected()).isZero());
  }

  @Test
  void aSilentSensorIsToldAndTheOtherReadMeanwhile() throws Exception {
    start();
    twin.silent(true);
    assertThat(nitrate.nextTrouble("no-answer").text())
        .isEqualTo(
            "SDI-12 sensor 0 on serial port %s did not answer"
                .formatted(folder.resolve("converter")));
    assertThat(chloride.nextTrouble("no-answer").remedy()).contains("12 V");
    single.measures(7);
    reads(other, 7);
    nitrate.nextTrouble("no-data");
    assertThat(links.get(0).check().condition()).isEqualTo(Condition.SILENT);
    twin.measures(191, 22, -14);
    twin.silent(false);
    reads(nitrate, 191);
    nitrate.nextTrouble("data-back");
    reads(chloride, -14);
  }

  @Test
  void noiseAndHalfAnswersAreCountedAndToldAndReadingGoesOn() throws Exception {
    start();
    single.garbles(text -> "#\u00ff~" + text);
    assertThat(other.nextTrouble("answer-rejected").text())
        .endsWith("\"#\\xFF~b+5.25\" begins with no sensor's address");
    single.garbles(text -> text.substring(0, 3));
    LinkCounts noisy = links.get(2).counts();
    Eventually.become(
        "half answers counted", () -> links.get(2).counts().rejected() > noisy.rejected() + 1);
    single.measures(8);
    single.garbles(text -> text);
    reads(other, 8);
    assertThat(links.get(0).counts().rejected()).isZero();
  }

  @Test
  void aMegabyteThatNobodyAskedForIsCountedAndReadingGoesOn() throws Exception {
    start();
    converter.sends("+123".repeat(256 * 1024));
    assertThat(nitrate.nextTrouble().code()).isIn("unasked-bytes", "answer-rejected", "no-answer");
    twin.measures(192, 23, -15);
    reads(nitrate, 192);
    reads(chloride, -15);
  }

  @Test
  void aConverterThatIsUnpluggedIsReadAgainWhenItIsBack() throws Exception {
    start();
    for (int times = 0; times < 2; times++) {
      converter.unplug();
      nitrate.nextTrouble("port-lost");
      for (Link link : links) {
        Eventually.become("lost", () -> link.check().condition() == Condition.LOST);
      }
      double millivolts = 200 + times;
      twin.measures(millivolts, 20, millivolts);
      single.measures(millivolts);
      converter.plug();
      nitrate.nextTrouble("port-back");
      reads(nitrate, millivolts);
      reads(chloride, millivolts);
      reads(other, millivolts);
    }
    assertThat(chloride.troubles())
        .extracting(LinkTrouble::code)
        .doesNotContain("port-lost", "port-back");
  }
}
