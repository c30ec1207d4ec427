package hingetone.midi;

import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * A note as a MIDI channel can play it: on one channel no key is struck while it sounds.
 *
 * @param role the part it belongs to
 * @param key MIDI note number, 0 to 127
 * @param velocity MIDI velocity, 1 to 127
 * @param on where it starts, in quarter notes
 * @param off where it ends, in quarter notes
 * @param onMicros how much later (negative: earlier) than its place it starts, in microseconds
 * @param offMicros how much later (negative: earlier) than its place it ends, in microseconds
 */
public record MidiNote(
    Role role, int key, int velocity, Beats on, Beats off, long onMicros, long offMicros) {
  /** No tempo is faster: 400 dotted quarters a minute are 100 ms a quarter. */
  private static final long SHORTEST_QUARTER_MICROS = 100_000;

  private static final Comparator<MidiNote> BY_PLACE =
      Comparator.comparing(MidiNote::on)
          .thenComparing(MidiNote::off)
          .thenComparingLong(MidiNote::offMicros);

  /**
   * The notes of some parts, sorted by where they start, then by where they end. Of two notes of a
   * key of a channel that overlap the first ends where the second starts, and of two at one place
   * the louder stays. This holds at every tempo, whatever the notes' offsets.
   */
  public static List<MidiNote> of(List<Part> parts) {
    List<MidiNote> notes = byKey(parts);
    notes.sort(BY_PLACE);
    return notes;
  }

  /** The same notes key by key. */
  static List<MidiNote> byKey(List<Part> parts) {
    Map<Integer, List<MidiNote>> byKey = new TreeMap<>();
    for (Part part : parts) {
      for (Note note : part.notes()) {
        int place = part.role().channel() * 128 + note.key();
        byKey.computeIfAbsent(place, k -> new ArrayList<>()).add(of(part.role(), note));
      }
    }
    List<MidiNote> notes = new ArrayList<>();
    byKey.values().forEach(struck -> addKey(struck, notes));
    return notes;
  }

  private static MidiNote of(Role role, Note note) {
    long offset = note.offsetMicros();
    return new MidiNote(
        role, note.key(), note.velocity(), note.onset(), note.end(), offset, offset);
  }

  /** The same note so much later. */
  public MidiNote later(Beats by) {
    return new MidiNote(role, key, velocity, on.plus(by), off.plus(by), onMicros, offMicros);
  }

  /** Adds the notes of one key of one channel, walking back from the last. */
  private static void addKey(List<MidiNote> struck, List<MidiNote> into) {
    List<MidiNote> single = withoutDoubles(struck);
    Optional<MidiNote> next = Optional.empty();
    for (int i = single.size() - 1; i >= 0; i--) {
      MidiNote whole = single.get(i);
      MidiNote note = next.map(whole::endedBefore).orElse(whole);
      into.add(note);
      next = Optional.of(note);
    }
  }

  private static List<MidiNote> withoutDoubles(List<MidiNote> struck) {
    Map<Beats, MidiNote> byStart = new TreeMap<>();
    for (MidiNote note : struck) {
      byStart.merge(note.on, note, (a, b) -> b.velocity > a.velocity ? b : a);
    }
    return List.copyOf(byStart.values());
  }

  /**
   * This note cut where the next of its key starts. Its offset is limited too, by half the least
   * time its length can take, so that its own end, which is not later than the next start, still
   * comes after its start.
   */
  private MidiNote endedBefore(MidiNote next) {
    Beats end = off.min(next.on);
    long room = end.minus(on).toUnits(SHORTEST_QUARTER_MICROS) / 2;
    long start = Math.min(onMicros, next.onMicros + room);
    return new MidiNote(role, key, velocity, on, end, start, Math.min(start, next.onMicros));
  }
}
