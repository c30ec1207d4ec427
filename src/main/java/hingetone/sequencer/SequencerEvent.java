package hingetone.sequencer;

import hingetone.time.Position;

/**
 * Something that happened. Told on the thread that keeps the time, so a listener only puts it into
 * a queue. Times are those at which it is heard, on the machine's clock; with sound output that is
 * a little ahead.
 */
public sealed interface SequencerEvent {
  /** A beat of a bar, its first included. */
  record Beat(long nanos, Position position) implements SequencerEvent {}

  /**
   * A bar begins.
   *
   * @param lap the lap, 0 in the count-in
   * @param keyShift how far the keys of this bar lie from the chart's, in semitones
   */
  record BarLine(long nanos, int lap, int bar, int keyShift) implements SequencerEvent {}

  /** The last lap is over. */
  record Finished(long nanos) implements SequencerEvent {}

  /** Tempo, loop, mutes or anything else that {@link Status} shows is not what it was. */
  record Changed(Status status) implements SequencerEvent {}

  /** A device vanished; the music goes on without it. */
  record Lost(String device) implements SequencerEvent {}

  /** A lost device is back and in use again. */
  record Found(String device) implements SequencerEvent {}

  /** The sound ran dry so many times since the start. */
  record Underrun(int count) implements SequencerEvent {}

  /** A lap could not be made, or the output failed; in a sentence for people. */
  record Trouble(String sentence) implements SequencerEvent {}
}
