package hingetone.ground.ways;

import hingetone.neck.Figure;
import hingetone.neck.Fretboard;
import hingetone.neck.Spot;
import hingetone.theory.Pitch;
import hingetone.time.Beats;
import java.util.List;
import java.util.Optional;

/**
 * A busy way over a line, its last step landing on it.
 *
 * @param kind how it goes
 * @param steps what is played, in order; the last is 0 beats before the line
 * @param fromFret lowest fret of the first step
 * @param toFret lowest fret of the last step
 * @param travel millimetres the hand travels
 */
public record Run(Kind kind, List<Step> steps, int fromFret, int toFret, double travel) {

  /** How a run goes. */
  public enum Kind {
    /** A figure walked up or down by single frets. */
    WALK,
    /** Up or down the old scale into a note of the new one. */
    SCALE
  }

  /**
   * One step: notes struck together, or one after the other.
   *
   * @param beatsBefore when it starts, in beats of the meter before the line
   * @param beats how long it takes
   * @param together whether its notes are struck at once
   * @param spots where they are played
   * @param notes how they sound, spelled in the key before, on the line in the key after
   */
  public record Step(
      Beats beatsBefore, Beats beats, boolean together, List<Spot> spots, List<Pitch> notes) {
    public Step {
      spots = List.copyOf(spots);
      notes = List.copyOf(notes);
    }
  }

  public Run {
    steps = List.copyOf(steps);
  }

  /** Frets from the first step to the last, negative when it goes down. */
  public int frets() {
    return toFret - fromFret;
  }

  /** Where the first step is played. */
  public List<Spot> figure() {
    return steps.get(0).spots();
  }

  /**
   * The figure of a walk octaves away in its new fingering, where the neck has room for all its
   * steps; empty for scale runs.
   */
  public Optional<Figure> octaves(Fretboard neck, int octaves) {
    if (kind == Kind.SCALE) {
      return Optional.empty();
    }
    List<Figure.Touch> touches =
        figure().stream().map(spot -> new Figure.Touch(spot, Optional.empty())).toList();
    return new Figure(touches, steps.get(0).together())
        .octaves(neck, octaves)
        .filter(f -> f.low() + frets() >= 0 && f.high() + frets() <= neck.lastFret());
  }
}
