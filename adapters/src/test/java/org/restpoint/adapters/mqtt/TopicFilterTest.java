package org.restpoint.adapters.mqtt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** One level of a topic says whose message it is. */
class TopicFilterTest {

  @ParameterizedTest
  @CsvSource({
    "field/+/ise,field/no3-a/ise,no3-a",
    "+/ise,node 7/ise,node 7",
    "field/+,field/,''",
    "+,x,x",
    "field/+/ise,field/a/b/ise,",
    "field/+/ise,field/ise,",
    "field/+/ise,field/a/ise/x,",
    "a/+/a,a/a,",
    "field/no3/ise,field/no3/ise,"
  })
  void theLevelIsCaptured(String filter, String topic, String captured) {
    assertThat(new TopicFilter(filter).capturedFrom(topic).orElse(null)).isEqualTo(captured);
  }

  @Test
  void aNameIsPutIntoTheLevel() {
    assertThat(new TopicFilter("field/+/ise").topic("node-7")).isEqualTo("field/node-7/ise");
    assertThat(new TopicFilter("field/ise").topic("node-7")).isEqualTo("field/ise");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "field/#", "#", "a/+/+", "a/b+/c", "a/+b"})
  void anythingElseIsRefused(String filter) {
    assertThatThrownBy(() -> new TopicFilter(filter))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(
            "expected a topic, or one with a single level + as field/+/ise, found " + filter);
  }
}
