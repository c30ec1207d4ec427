package hingetone.score;

import hingetone.time.Beats;
import java.util.List;
import java.util.stream.Stream;

/**
 * One player's notes.
 *
 * @param role what it does in the band
 * @param sound how it sounds, until a mark of the score says otherwise
 * @param notes its notes, sorted
 */
public record Part(Role role, Sound sound, List<Note> notes) {
  public Part {
    notes = notes.stream().sorted().toList();
  }

  public boolean hasNotes() {
    return !notes.isEmpty();
  }

  /** This part with more notes. */
  public Part plus(List<Note> more) {
    return new Part(role, sound, Stream.concat(notes.stream(), more.stream()).toList());
  }

  /** The notes that start within a stretch (and, from the start, before it), counted from it. */
  public Part stretch(Beats from, Beats to) {
    return new Part(
        role,
        sound,
        notes.stream()
            .filter(n -> n.onset().isBefore(to))
            .filter(n -> from.isZero() || !n.onset().isBefore(from))
            .map(n -> n.withOnset(n.onset().minus(from)))
            .toList());
  }
}
