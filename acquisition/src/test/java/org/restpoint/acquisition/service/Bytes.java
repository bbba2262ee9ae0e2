package org.restpoint.acquisition.service;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** Every byte in the files of a folder. */
public final class Bytes {

  private Bytes() {}

  /** The names of the files that hold a text. */
  public static List<String> with(Path folder, String text) {
    return holding(
        folder, new String(text.getBytes(StandardCharsets.UTF_8), StandardCharsets.ISO_8859_1));
  }

  /** The names of the files that hold a number as a database stores it: 8 bytes, highest first. */
  public static List<String> with(Path folder, double number) {
    byte[] bytes = ByteBuffer.allocate(Double.BYTES).putDouble(number).array();
    return holding(folder, new String(bytes, StandardCharsets.ISO_8859_1));
  }

  private static List<String> holding(Path folder, String bytes) {
    return files(folder).stream()
        .filter(file -> read(file).contains(bytes))
        .map(file -> folder.relativize(file).toString())
        .toList();
  }

  /** How many bytes the files with this name have, and those that are named after it. */
  public static long size(Path folder, String name) {
    return files(folder).stream()
        .filter(file -> file.getFileName().toString().startsWith(name))
        .mapToLong(file -> read(file).length())
        .sum();
  }

  private static List<Path> files(Path folder) {
    try (Stream<Path> files = Files.walk(folder)) {
      return files.filter(Files::isRegularFile).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String read(Path file) {
    try {
      return new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
