package hingetone.take;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/**
 * The strings of a guitar that sends each string on a channel of its own: the highest on the first
 * of six channels, those from 1 on or the last six (common practice; MIDI 1.0's mode 4 has each
 * voice on a channel). So played, no string sounds two notes at once.
 */
final class GuitarChannels {
  private static final int LAST_SIX = 10;

  private GuitarChannels() {}

  /** The channel of string 1; empty where notes are not one string a channel. */
  static OptionalInt first(List<PlayedNote> notes) {
    Map<Integer, Long> until = new HashMap<>();
    int lowest = 16;
    for (PlayedNote note : notes) {
      if (note.on() < until.getOrDefault(note.channel(), Long.MIN_VALUE)) {
        return OptionalInt.empty();
      }
      until.put(note.channel(), note.off());
      lowest = Math.min(lowest, note.channel());
    }
    return until.size() < 2
        ? OptionalInt.empty()
        : OptionalInt.of(lowest >= LAST_SIX ? LAST_SIX : 0);
  }
}
