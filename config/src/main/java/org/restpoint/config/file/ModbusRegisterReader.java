package org.restpoint.config.file;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.restpoint.config.station.ModbusRegister;
import org.restpoint.config.station.ModbusRegister.NumberType;
import org.restpoint.config.station.ModbusRegister.Order;
import org.restpoint.config.station.ModbusRegister.Table;

/** Reads where a number stands in a Modbus device, and what it is. */
final class ModbusRegisterReader {

  /** The keys of a register. */
  static final List<String> KEYS =
      List.of("register", "table", "as", "words", "bytes", "scale", "offset", "missing");

  private static final String AN_ADDRESS =
      "the register's address as it is sent, a whole number from 0 to 65535";
  private static final String A_NUMBER = "a number, e.g. 0.1";
  private static final String A_MISSING =
      "a number as it stands in the register, e.g. -9999 or 0x8000";
  private static final double LARGEST = 1e12;
  private static final int ADDRESSES = 65_536;
  private static final int INPUT_HABIT = 30_001;
  private static final int HOLDING_HABIT = 40_001;
  private static final int HABIT_SPAN = 9_998;

  private final Section keys;

  ModbusRegisterReader(Section keys) {
    this.keys = keys;
  }

  Optional<ModbusRegister> read() {
    keys.only(KEYS);
    Optional<Integer> address = keys.need("register", AN_ADDRESS).flatMap(this::address);
    Optional<Table> table = word("table", Table.values(), true);
    Optional<NumberType> type = word("as", NumberType.values(), true);
    Optional<Order> words = word("words", Order.values(), false);
    Optional<Order> bytes = word("bytes", Order.values(), false);
    Optional<Double> scale = keys.find("scale").flatMap(this::scale);
    Optional<Double> offset = keys.find("offset").flatMap(ModbusRegisterReader::number);
    Optional<Double> missing =
        type.flatMap(of -> keys.find("missing").flatMap(entry -> missing(entry, of)));
    if (address.isEmpty()
        || table.isEmpty()
        || type.isEmpty()
        || !fits(address.get(), type.get())) {
      return Optional.empty();
    }
    return Optional.of(
        new ModbusRegister(
            table.get(),
            address.get(),
            type.get(),
            words.orElse(Order.BIG),
            bytes.orElse(Order.BIG),
            scale.orElse(1.0),
            offset.orElse(0.0),
            missing.map(OptionalDouble::of).orElse(OptionalDouble.empty())));
  }

  /** In hexadecimal always as it is sent; in decimal as it is sent unless it looks otherwise. */
  private Optional<Integer> address(Entry entry) {
    Optional<Long> hexadecimal = hexadecimal(entry, 4);
    if (hexadecimal.isPresent()) {
      return hexadecimal.map(Long::intValue);
    }
    Optional<Integer> address = entry.whole(0, ADDRESSES - 1).map(Long::intValue);
    return address.filter(given -> !isByHabit(entry, given));
  }

  /**
   * Many lists number input registers from 30001 and holding registers from 40001. Which of the two
   * countings is meant cannot be known, so neither is taken.
   */
  private static boolean isByHabit(Entry entry, int address) {
    for (int first : List.of(INPUT_HABIT, HOLDING_HABIT)) {
      if (address >= first && address <= first + HABIT_SPAN) {
        entry.refuse(
            AN_ADDRESS,
            address + ", which looks like the number in a list that counts from " + first,
            "write register: %d, table: %s; or 0x%X where %d itself is sent"
                .formatted(
                    address - first, first == INPUT_HABIT ? "input" : "holding", address, address));
        return true;
      }
    }
    return false;
  }

  private static Optional<Long> hexadecimal(Entry entry, int digits) {
    return entry
        .quietText()
        .filter(text -> text.matches("0x[0-9A-Fa-f]{1," + digits + "}"))
        .map(text -> Long.parseUnsignedLong(text.substring(2), 16));
  }

  private boolean fits(int address, NumberType type) {
    if (address + type.registers() <= ADDRESSES) {
      return true;
    }
    keys.find("register")
        .ifPresent(
            entry ->
                entry.refuse(
                    "an address from which %d registers fit below 65536"
                        .formatted(type.registers())));
    return false;
  }

  private <E extends Enum<E>> Optional<E> word(String key, E[] values, boolean needed) {
    List<String> words =
        Stream.of(values).map(value -> value.name().toLowerCase(Locale.ROOT)).toList();
    Optional<Entry> entry =
        needed ? keys.need(key, "one of " + String.join(", ", words)) : keys.find(key);
    return entry.flatMap(value -> value.word(words)).map(word -> values[words.indexOf(word)]);
  }

  private Optional<Double> scale(Entry entry) {
    Optional<Double> scale = number(entry);
    if (scale.filter(value -> value == 0).isPresent()) {
      entry.refuse("a number other than zero, e.g. 0.1");
      return Optional.empty();
    }
    return scale;
  }

  private static Optional<Double> number(Entry entry) {
    return new PlainNumber(-LARGEST, true, LARGEST, A_NUMBER).read(entry);
  }

  private static Optional<Double> missing(Entry entry, NumberType type) {
    return hexadecimal(entry, 4 * type.registers())
        .map(type::number)
        .or(
            () ->
                new PlainNumber(-Double.MAX_VALUE, true, Double.MAX_VALUE, A_MISSING).read(entry));
  }
}
