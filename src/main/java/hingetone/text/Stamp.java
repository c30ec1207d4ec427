package hingetone.text;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.zip.CRC32;

/**
 * The mark near the end of a file that this program wrote: what kind of file it is, and a sum over
 * the whole of it, so that one that somebody has worked on since is not taken for one that nobody
 * would miss.
 *
 * <pre>{@code hingetone txt 1c291ca3}</pre>
 *
 * @param kind the kind of file, in small letters and hyphens
 */
public record Stamp(String kind) {
  /** What a file turns out to be. */
  public enum Finding {
    /** Of this kind, and as it was written. */
    OURS,
    /** Of another kind, and as it was written. */
    OF_ANOTHER_KIND,
    /** Worked on since it was written. */
    CHANGED,
    /** Not written by this program. */
    FOREIGN
  }

  private static final Pattern MARK = Pattern.compile("hingetone ([a-z-]+) ([0-9a-f]{8})");
  private static final String NO_SUM = "00000000";
  private static final int TAIL = 64;
  private static final int BLOCK = 1 << 16;

  private record Mark(String kind, long sumAt, String sum) {}

  /** The mark for a writer to put within the last {@value #TAIL} bytes, its sum still open. */
  public String open() {
    return "hingetone " + kind + " " + NO_SUM;
  }

  /** Puts the sum into a finished file; one that bears no mark stays as it is. */
  public static void close(Path file) throws IOException {
    try (FileChannel channel =
        FileChannel.open(file, StandardOpenOption.READ, StandardOpenOption.WRITE)) {
      Optional<Mark> mark = mark(channel);
      if (mark.isPresent()) {
        long at = mark.get().sumAt();
        channel.write(StandardCharsets.US_ASCII.encode(sum(channel, at)), at);
      }
    }
  }

  /** What a regular file is. */
  public Finding find(Path file) throws IOException {
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
      Optional<Mark> mark = mark(channel);
      if (mark.isEmpty()) {
        return Finding.FOREIGN;
      }
      if (!mark.get().sum().equals(sum(channel, mark.get().sumAt()))) {
        return Finding.CHANGED;
      }
      return mark.get().kind().equals(kind) ? Finding.OURS : Finding.OF_ANOTHER_KIND;
    }
  }

  private static Optional<Mark> mark(FileChannel file) throws IOException {
    long start = Math.max(0, file.size() - TAIL);
    ByteBuffer tail = ByteBuffer.allocate(TAIL);
    file.position(start);
    while (tail.hasRemaining() && file.read(tail) >= 0) {
      continue;
    }
    // A byte is a character, so that places are places in the file.
    String text = StandardCharsets.ISO_8859_1.decode(tail.flip()).toString();
    return MARK.matcher(text)
        .results()
        .reduce((earlier, later) -> later)
        .map((MatchResult m) -> new Mark(m.group(1), start + m.start(2), m.group(2)));
  }

  /** The sum (CRC-32, ISO 3309) over a file as it is while the sum in it is open. */
  private static String sum(FileChannel file, long at) throws IOException {
    CRC32 sum = new CRC32();
    add(file, 0, at, sum);
    sum.update(NO_SUM.getBytes(StandardCharsets.US_ASCII));
    add(file, at + NO_SUM.length(), file.size(), sum);
    return String.format("%08x", sum.getValue());
  }

  private static void add(FileChannel file, long from, long to, CRC32 sum) throws IOException {
    ByteBuffer block = ByteBuffer.allocate(BLOCK);
    for (long at = from; at < to; ) {
      block.clear().limit((int) Math.min(BLOCK, to - at));
      int count = file.read(block, at);
      if (count < 0) {
        throw new IOException("the file became shorter while it was read");
      }
      sum.update(block.flip());
      at += count;
    }
  }
}
