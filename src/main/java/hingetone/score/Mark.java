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

  /** The same mark, later by some quarter notes. */
  Mark later(Beats by);

  /** A section starts. */
  record OfSection(Beats at, String name) implements Mark {
    @Override
    public OfSection later(Beats by) {
      return new OfSection(at.plus(by), name);
    }
  }

  /** A key starts. */
  record OfKey(Beats at, Key key) implements Mark {
    @Override
    public OfKey later(Beats by) {
      return new OfKey(at.plus(by), key);
    }
  }

  /** A chord starts; empty for no chord. */
  record OfChord(Beats at, Optional<Chord> chord) implements Mark {
    @Override
    public OfChord later(Beats by) {
      return new OfChord(at.plus(by), chord);
    }
  }

  /** Something that whoever reads the score is told there. */
  record OfCue(Beats at, String words) implements Mark {
    @Override
    public OfCue later(Beats by) {
      return new OfCue(at.plus(by), words);
    }
  }

  /** A part sounds otherwise than before. */
  record OfSound(Beats at, Role role, Sound sound) implements Mark {
    @Override
    public OfSound later(Beats by) {
      return new OfSound(at.plus(by), role, sound);
    }
  }

  /** A meter starts, at a bar line. */
  record OfMeter(Beats at, Meter meter) implements Mark {
    @Override
    public OfMeter later(Beats by) {
      return new OfMeter(at.plus(by), meter);
    }
  }

  /** A tempo starts, counting the notes that the meter holding there counts. */
  record OfTempo(Beats at, Tempo tempo) implements Mark {
    @Override
    public OfTempo later(Beats by) {
      return new OfTempo(at.plus(by), tempo);
    }
  }
}
