package org.restpoint.adapters.recording;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/** The columns of one file: what stands where, found in its header or said by number. */
final class BoundColumns {

  private final Role[] roles;
  private final String[] headings;
  private final int needed;
  private final int used;

  private BoundColumns(Map<Role, Column> columns, List<String> header) {
    int last = -1;
    for (Column column : columns.values()) {
      last = Math.max(last, indexOf(column, header));
    }
    this.needed = last + 1;
    this.used = columns.size();
    this.roles = new Role[Math.max(needed, header.size())];
    this.headings = new String[roles.length];
    Arrays.fill(roles, Role.OTHER);
    Arrays.fill(headings, "");
    columns.forEach((role, column) -> roles[indexOf(column, header)] = role);
    for (int i = 0; i < header.size(); i++) {
      headings[i] = roles[i] == Role.OTHER ? "" : header.get(i);
    }
  }

  /** The columns of a file without a header. */
  static BoundColumns numbered(RecordingColumns columns) {
    return new BoundColumns(columns.byRole(), List.of());
  }

  /** The columns of a file with this header, in which {@link #faults} finds nothing. */
  static BoundColumns headed(RecordingColumns columns, List<String> header) {
    return new BoundColumns(columns.byRole(), header);
  }

  /** What of the columns is not to be found in a header, each a clause for a person. */
  static List<String> faults(RecordingColumns columns, List<String> header) {
    List<String> faults = new ArrayList<>();
    for (Column column : columns.byRole().values()) {
      if (column instanceof Column.Headed headed) {
        long times = header.stream().filter(headed.heading()::equals).count();
        if (times == 0) {
          faults.add("no column " + HeaderAdvice.quoted(headed.heading()));
        } else if (times > 1) {
          faults.add(
              "%d columns %s, so that its number must be given"
                  .formatted(times, HeaderAdvice.quoted(headed.heading())));
        }
      } else if (column instanceof Column.Numbered numbered && numbered.number() > header.size()) {
        faults.add("no column %d".formatted(numbered.number()));
      }
    }
    return faults;
  }

  private static int indexOf(Column column, List<String> header) {
    return column instanceof Column.Headed headed
        ? header.indexOf(headed.heading())
        : ((Column.Numbered) column).number() - 1;
  }

  /** What a column gives, counted from 0. */
  Role role(int column) {
    return column < roles.length ? roles[column] : Role.OTHER;
  }

  /** The heading of a column that is read; empty for one that is not. */
  String heading(int column) {
    return column < headings.length ? headings[column] : "";
  }

  /** How many values a row needs at least. */
  int needed() {
    return needed;
  }

  /** How many columns there are. */
  int count() {
    return roles.length;
  }

  /** How many columns are read. */
  int used() {
    return used;
  }
}
