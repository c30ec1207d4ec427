package hingetone.score;

import hingetone.theory.Chord;
import hingetone.theory.Key;
import hingetone.time.Beats;
import hingetone.time.Meter;
import hingetone.time.Tempo;
import java.util.Optional;

/** Something that holds from a place in a score onwards. */
public sealed interface Mark {
  /** Where it starts to hold, in quarter notes from the start of the score. */
  Beats at();

  /** A section starts. */
  record OfSection(Beats at, String name) implements Mark {}

  /** A key starts. */
  record OfKey(Beats at, Key key) implements Mark {}

  /** A chord starts; empty for no chord. */
  record OfChord(Beats at, Optional<Chord> chord) implements Mark {}

  /** A meter starts, at a bar line. */
  record OfMeter(Beats at, Meter meter) implements Mark {}

  /** A tempo starts, counting the notes that the meter holding there counts. */
  record OfTempo(Beats at, Tempo tempo) implements Mark {}
}
