package hingetone.sequencer;

import hingetone.midi.MidiEvents;
import java.util.Arrays;
import java.util.Objects;
import java.util.function.Predicate;
import javax.sound.midi.ShortMessage;

/**
 * The notes that sound. On the wire each key of each channel is struck and released by turns,
 * whatever overlaps above.
 */
final class SoundingNotes {
  private final PlannedNote[][] sounding = new PlannedNote[16][128];

  /** Strikes a note; where its key sounds already, that note ends first. */
  void start(PlannedNote voice, int velocity, long now, MessageSink sink) {
    release(sounding[voice.channel()][voice.key()], now, sink);
    sounding[voice.channel()][voice.key()] = voice;
    sink.send(
        now, MidiEvents.message(ShortMessage.NOTE_ON, voice.channel(), voice.key(), velocity));
  }

  /** Ends a note, unless its key has been struck again or released since. */
  void end(PlannedNote voice, long now, MessageSink sink) {
    if (sounding[voice.channel()][voice.key()] == voice) {
      release(voice, now, sink);
    }
  }

  /** Ends every note that a test picks. */
  void release(Predicate<PlannedNote> picked, long now, MessageSink sink) {
    for (PlannedNote[] keys : sounding) {
      for (PlannedNote voice : keys) {
        if (voice != null && picked.test(voice)) {
          release(voice, now, sink);
        }
      }
    }
  }

  /** Whether anything sounds on a channel. */
  boolean soundOn(int channel) {
    return Arrays.stream(sounding[channel]).anyMatch(Objects::nonNull);
  }

  private void release(PlannedNote voice, long now, MessageSink sink) {
    if (voice != null) {
      sounding[voice.channel()][voice.key()] = null;
      sink.send(now, MidiEvents.message(ShortMessage.NOTE_OFF, voice.channel(), voice.key(), 0));
    }
  }
}
