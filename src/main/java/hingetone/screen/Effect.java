package hingetone.screen;

import hingetone.sequencer.Command;
import java.util.Optional;

/** Something to be done outside the picture. The runner does it and answers with messages. */
public sealed interface Effect {
  /** A live change for the band. */
  record Send(Command command) implements Effect {}

  /** The next groove that fits. */
  record NextGroove() implements Effect {}

  /** The next bank of sounds that is installed. */
  record NextSounds() implements Effect {}

  /** The hand stays around a fret, or is free again. */
  record StayAround(Optional<Integer> fret) implements Effect {}

  /** The next choice of the phrases the machine plays: none, statements, all, crossings. */
  record NextExamples() implements Effect {}

  /** The machine plays the way over the next crossing, once. */
  record NextCrossingExample() implements Effect {}

  /** The player's own grade of what was played, 1 to 5. */
  record Grade(int grade) implements Effect {}

  /** Record a take from now on, or end the one that is recorded. */
  record RecordTake() implements Effect {}

  /** Keep what was played last as a take. */
  record KeepLast() implements Effect {}

  /** Remember what is shown. */
  record Remember(ViewSettings settings) implements Effect {}

  /** Draw everything anew. */
  record Redraw() implements Effect {}

  /** Give the terminal back to the shell until it wakes the program. */
  record StepAside() implements Effect {}

  /** Leave. */
  record Quit() implements Effect {}
}
