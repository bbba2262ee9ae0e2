package org.restpoint.adapters.serial;

import com.sun.jna.LastErrorException;
import com.sun.jna.Library;
import com.sun.jna.Memory;
import com.sun.jna.Native;
import com.sun.jna.NativeLong;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;

/**
 * A real pair of terminals made by the kernel: a link opens {@link #path()} as its serial port, the
 * test is the meter at the other end. Closing it is pulling the plug. Linux only.
 *
 * <p>What is sent before a link has opened the port is not read: a serial link begins with what
 * comes after opening, and passes over a line whose beginning it did not see. Wait until the link
 * is reading, or send again and again as a meter does.
 */
public final class PseudoTerminal implements AutoCloseable {

  /** What Java has no other way to. */
  private interface Libc extends Library {
    Libc C = Native.load("c", Libc.class);

    int posix_openpt(int flags) throws LastErrorException;

    int grantpt(int fd) throws LastErrorException;

    int unlockpt(int fd) throws LastErrorException;

    int ptsname_r(int fd, byte[] name, NativeLong size) throws LastErrorException;

    int tcgetattr(int fd, Memory termios) throws LastErrorException;

    void cfmakeraw(Memory termios);

    int tcsetattr(int fd, int when, Memory termios) throws LastErrorException;

    NativeLong read(int fd, byte[] bytes, NativeLong count) throws LastErrorException;

    NativeLong write(int fd, byte[] bytes, NativeLong count) throws LastErrorException;

    int poll(int[] fdAndEvents, NativeLong count, int timeoutMillis) throws LastErrorException;

    int close(int fd) throws LastErrorException;
  }

  private static final int READ_WRITE = 2; // O_RDWR
  private static final int NOT_CONTROLLING = 0x100; // O_NOCTTY
  private static final int CLOSE_ON_EXEC = 0x80000; // O_CLOEXEC
  private static final int POLL_IN = 1; // POLLIN
  private static final int TERMIOS_BYTES = 256; // more than struct termios has on any Linux

  private final int master;
  private final Path device;
  private final Path path;
  private final Set<Path> links = new HashSet<>();
  private boolean closed;

  /** Makes a pair in raw mode: bytes pass unchanged and unechoed. */
  public PseudoTerminal() {
    master = Libc.C.posix_openpt(READ_WRITE | NOT_CONTROLLING | CLOSE_ON_EXEC);
    Libc.C.grantpt(master);
    Libc.C.unlockpt(master);
    byte[] name = new byte[128];
    Libc.C.ptsname_r(master, name, new NativeLong(name.length));
    device = Path.of(Native.toString(name));
    path = named(device);
    links.add(path);
    try (Memory termios = new Memory(TERMIOS_BYTES)) {
      Libc.C.tcgetattr(master, termios);
      Libc.C.cfmakeraw(termios);
      Libc.C.tcsetattr(master, 0, termios);
    }
  }

  /**
   * The kernel gives a number that was freed to whoever asks next, another test at the same time
   * too: so the device goes by a name of its own, that goes with it.
   */
  private static Path named(Path device) {
    try {
      Path folder = Files.createTempDirectory("terminal");
      folder.toFile().deleteOnExit();
      Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
      return Files.createSymbolicLink(folder.resolve("port"), device);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The device a link opens. */
  public Path path() {
    return path;
  }

  /** Makes {@code link} a symbolic link to the device, in place of what it was; it goes with it. */
  public synchronized Path linkedAs(Path link) throws IOException {
    links.add(link);
    Path fresh = link.resolveSibling(link.getFileName() + ".fresh");
    Files.deleteIfExists(fresh);
    Files.createSymbolicLink(fresh, device);
    return Files.move(
        fresh, link, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }

  /** Sends text to the link, one byte a character (ISO 8859-1). */
  public void send(String text) {
    byte[] rest = text.getBytes(StandardCharsets.ISO_8859_1);
    while (rest.length > 0) {
      int sent = Libc.C.write(master, rest, new NativeLong(rest.length)).intValue();
      rest = Arrays.copyOfRange(rest, sent, rest.length);
    }
  }

  /**
   * What the link has sent, one character a byte; waits for a first byte.
   *
   * @return empty when nothing came in time
   */
  public String receive(int timeoutMillis) {
    int[] wanted = {master, POLL_IN};
    if (Libc.C.poll(wanted, new NativeLong(1), timeoutMillis) == 0) {
      return "";
    }
    byte[] bytes = new byte[4096];
    int count = Libc.C.read(master, bytes, new NativeLong(bytes.length)).intValue();
    return new String(bytes, 0, count, StandardCharsets.ISO_8859_1);
  }

  /** Pulls the plug: the device vanishes, and whoever has it open finds it gone. */
  @Override
  public synchronized void close() {
    if (!closed) {
      closed = true;
      try {
        for (Path link : links) {
          remove(link);
        }
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      } finally {
        Libc.C.close(master);
      }
    }
  }

  /** One that leads to another device by now stays. */
  private void remove(Path link) throws IOException {
    if (Files.isSymbolicLink(link) && Files.readSymbolicLink(link).equals(device)) {
      Files.delete(link);
    }
  }
}
