package hingetone.sequencer;

import javax.sound.midi.ShortMessage;

/** Takes what the timeline hands out, in order of time. */
public interface MessageSink {
  /**
   * A MIDI message.
   *
   * @param due when, in nanoseconds on the timeline
   */
  void send(long due, ShortMessage message);

  /** Something to tell the listener. */
  void tell(SequencerEvent moment);
}
