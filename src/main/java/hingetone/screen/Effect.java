package hingetone.screen;

/** Something to be done outside the picture. The runner does it and answers with messages. */
public sealed interface Effect {
  /** Pause, or go on. */
  record TogglePause() implements Effect {}

  /** Stand still, whatever it did. */
  record Pause() implements Effect {}

  /** Stop and go back to the count-in. */
  record Stop() implements Effect {}

  /** Start again from the count-in. */
  record Restart() implements Effect {}

  /** The tempo up or down by beats a minute. */
  record TempoStep(int bpm) implements Effect {}

  /** A tap of the tempo, and when it was, in nanoseconds. */
  record Tap(long nanos) implements Effect {}

  /** The tempo rising by itself, on or off. */
  record ToggleRamp() implements Effect {}

  /** A voice silent, or back. */
  record ToggleMute(Fader voice) implements Effect {}

  /** A voice louder or softer by steps. */
  record LevelStep(Fader voice, int steps) implements Effect {}

  /** The metronome on or off. */
  record ToggleClick() implements Effect {}

  /** The next of the metronome's ways: every beat, two and four, every other bar. */
  record NextClick() implements Effect {}

  /** Bars that go round from now on, laps counted on. */
  record LoopBars(int first, int last) implements Effect {}

  /** The bars around the next crossing go round from now on. */
  record LoopCrossing(int barsBefore, int barsAfter) implements Effect {}

  /** No loop. */
  record EndLoop() implements Effect {}

  /** On from another bar, laps counted on. */
  record Jump(int bar) implements Effect {}

  /** All keys up or down by semitones. */
  record KeyStep(int semitones) implements Effect {}

  /** Another key for each lap, on or off. */
  record ToggleEveryKey() implements Effect {}

  /** The next groove that fits. */
  record NextGroove() implements Effect {}

  /** Bars in which the band drops out, on or off. */
  record ToggleSilentBars() implements Effect {}

  /** The next choice of the phrases the machine plays: none, statements, all, crossings. */
  record NextExamples() implements Effect {}

  /** The machine plays the way over the next crossing, once. */
  record NextCrossingExample() implements Effect {}

  /** Remember what is shown. */
  record Remember(ViewSettings settings) implements Effect {}

  /** Draw everything anew. */
  record Redraw() implements Effect {}

  /** Give the terminal back to the shell until it wakes the program. */
  record StepAside() implements Effect {}

  /** Leave. */
  record Quit() implements Effect {}
}
