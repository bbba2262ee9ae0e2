package org.restpoint.acquisition.slip;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.event.Result;
import org.restpoint.stability.chemistry.Analyte;

/** Invented results of the tests, and their slips. */
final class Slips {

  static final Subject NITRATE = of("nitrate");

  private Slips() {}

  static Subject of(String analyte) {
    return new Subject(Analyte.named(analyte), ZoneOffset.ofHours(-5));
  }

  static Subject ofNobodyKnows() {
    return new Subject(Optional.empty(), ZoneOffset.UTC);
  }

  static String file(String name) {
    try (InputStream file =
        Objects.requireNonNull(Slips.class.getResourceAsStream("/slip/" + name), name)) {
      return new String(file.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static Result result(String name) {
    return changed(name, same -> {});
  }

  /** A result of the files, with its JSON changed. */
  static Result changed(String name, Consumer<ObjectNode> change) {
    try {
      ObjectNode json = (ObjectNode) EventJson.mapper().readTree(file(name + ".json"));
      change.accept(json);
      return ResultLines.read(json.toString());
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException(e);
    }
  }

  static String text(Result result, int width) {
    return SlipText.of(Slip.of(result, NITRATE), width);
  }
}
