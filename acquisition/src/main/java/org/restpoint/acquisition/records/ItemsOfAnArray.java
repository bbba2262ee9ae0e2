package org.restpoint.acquisition.records;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import org.restpoint.acquisition.event.EventJson;

/** An array of JSON that is written item by item, a line each, however many there are. */
final class ItemsOfAnArray {

  private final Writer out;
  private boolean begun;

  ItemsOfAnArray(Writer out) {
    this.out = out;
  }

  void add(JsonNode item) {
    write(begun ? ",\n" : "\n");
    write(EventJson.write(item));
    begun = true;
  }

  void write(String text) {
    try {
      out.write(text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
