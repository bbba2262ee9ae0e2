package org.restpoint.config.file;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/**
 * A test of each row of the lists of mistakes: an example, what stands in it, what is put there,
 * what is told, and whether the schema refuses it as well.
 */
@Target(ElementType.METHOD)
@Retention(RetentionPolicy.RUNTIME)
@ParameterizedTest
@CsvFileSource(
    resources = {
      "/mistakes.csv",
      "/mistakes-lab.csv",
      "/mistakes-checks.csv",
      "/mistakes-modbus.csv",
      "/mistakes-moves.csv",
      "/mistakes-numbers.csv",
      "/mistakes-mqtt.csv",
      "/mistakes-recording.csv",
      "/mistakes-recipes.csv",
      "/mistakes-simulated.csv",
      "/mistakes-serial.csv",
      "/mistakes-sdi12.csv",
      "/mistakes-guidance.csv"
    },
    delimiter = '|',
    numLinesToSkip = 1,
    maxCharsPerColumn = 10_000)
@interface EachMistake {}
