package hingetone.score;

import hingetone.time.Beats;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Parts and marks over a length of music. Time 0 is the start of the form; notes and marks before 0
 * belong to a count-in.
 *
 * @param title what it is called
 * @param countIn length before time 0 in quarter notes, 0 or more
 * @param length length from time 0 in quarter notes
 * @param marks keys, sections, chords, meters and tempos, in order of time
 * @param parts the parts
 */
public record Score(String title, Beats countIn, Beats length, List<Mark> marks, List<Part> parts) {
  public Score {
    marks = marks.stream().sorted(Comparator.comparing(Mark::at)).toList();
    parts = List.copyOf(parts);
  }

  /** The marks of one kind, in order of time. */
  public <M extends Mark> Stream<M> marks(Class<M> kind) {
    return marks.stream().filter(kind::isInstance).map(kind::cast);
  }

  /** The part with a role, when the score has one. */
  public Optional<Part> part(Role role) {
    return parts.stream().filter(part -> part.role() == role).findFirst();
  }
}
