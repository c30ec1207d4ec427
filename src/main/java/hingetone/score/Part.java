package hingetone.score;

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

  /** This part with another sound. */
  public Part withSound(Sound newSound) {
    return new Part(role, newSound, notes);
  }

  /** This part with more notes. */
  public Part plus(List<Note> more) {
    return new Part(role, sound, Stream.concat(notes.stream(), more.stream()).toList());
  }
}
