package hingetone.sound;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;

/** The chunks of a SoundFont's RIFF file; says of another kind of file what it is instead. */
final class RiffFile {
  private static final int HEAD_BYTES = 8;
  private static final int MOST_CHUNKS = 1000;
  private static final int MOST_RECORD_BYTES = 1 << 26;

  private final Path file;
  private final FileChannel channel;
  private final Map<String, Chunk> chunks = new HashMap<>();

  /** What a chunk holds: its first byte's place in the file and how many bytes there are. */
  record Chunk(long from, long size) {}

  private RiffFile(Path file, FileChannel channel) {
    this.file = file;
    this.channel = channel;
  }

  /**
   * Finds the chunks.
   *
   * @throws SoundFailure when it is no SoundFont, cut off or damaged
   */
  static RiffFile read(Path file, FileChannel channel) throws SoundFailure, IOException {
    RiffFile riff = new RiffFile(file, channel);
    ByteBuffer head = riff.bytes(0, (int) Math.min(12, channel.size()));
    riff.checkKind(head);
    long size = HEAD_BYTES + (head.getInt(4) & 0xFFFF_FFFFL);
    if (size > channel.size()) {
      throw new SoundFailure(
          String.format(
              Locale.ROOT,
              "%s is cut off: %,d of its %,d bytes are there; copy or download it again.",
              file,
              channel.size(),
              size));
    }
    riff.walk(12, size, true);
    return riff;
  }

  private void checkKind(ByteBuffer head) throws SoundFailure {
    String all = StandardCharsets.ISO_8859_1.decode(head.duplicate()).toString();
    if (all.isEmpty()) {
      throw new SoundFailure(file + " is empty; copy or download it again.");
    }
    if (all.startsWith("\u001f\u008b") || all.startsWith("PK") || all.startsWith("sfArk")) {
      throw new SoundFailure(file + " is packed: unpack it and give the .sf2 in it.");
    }
    if (all.startsWith("RIFF") && all.endsWith("DLS ")) {
      throw new SoundFailure(
          file + " is a DLS bank, which cannot be played: give a SoundFont 2 (.sf2).");
    }
    if (!all.startsWith("RIFF") || !all.endsWith("sfbk")) {
      throw new SoundFailure(
          file + " is not a sound font that can be read; give a General MIDI bank (.sf2).");
    }
  }

  private void walk(long from, long end, boolean top) throws SoundFailure, IOException {
    long at = from;
    while (at + HEAD_BYTES <= end) {
      ByteBuffer head = bytes(at, HEAD_BYTES);
      String name = StandardCharsets.ISO_8859_1.decode(head.duplicate().limit(4)).toString();
      Chunk chunk = new Chunk(at + HEAD_BYTES, head.getInt(4) & 0xFFFF_FFFFL);
      long next = chunk.from() + chunk.size();
      if (next > end || chunks.size() == MOST_CHUNKS) {
        throw damaged(name);
      }
      if (top && name.equals("LIST")) {
        walk(chunk.from() + 4, next, false);
      } else {
        chunks.put(name, chunk);
      }
      at = next + chunk.size() % 2;
    }
  }

  /** A chunk by its name. */
  Chunk chunk(String name) throws SoundFailure {
    Chunk chunk = chunks.get(name);
    if (chunk == null) {
      throw damaged(name);
    }
    return chunk;
  }

  /** A chunk that is a list of at least one record of so many bytes. */
  ByteBuffer records(String name, int bytes) throws SoundFailure, IOException {
    Chunk chunk = chunk(name);
    if (chunk.size() < bytes || chunk.size() % bytes != 0 || chunk.size() > MOST_RECORD_BYTES) {
      throw damaged(name);
    }
    return bytes(chunk.from(), (int) chunk.size());
  }

  /** Bytes from a place of the file on; fewer where it ends. */
  ByteBuffer bytes(long from, int count) throws IOException {
    ByteBuffer bytes = ByteBuffer.allocate(count).order(ByteOrder.LITTLE_ENDIAN);
    while (bytes.hasRemaining() && channel.read(bytes, from + bytes.position()) > 0) {
      continue;
    }
    return bytes.flip();
  }

  SoundFailure damaged(String chunk) {
    return new SoundFailure(
        file + " is damaged (its part " + chunk + "): copy or download it again.");
  }
}
