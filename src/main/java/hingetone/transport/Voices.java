package hingetone.transport;

import hingetone.midi.MidiEvents;
import java.util.Arrays;
import java.util.Objects;
import java.util.function.Predicate;
import javax.sound.midi.ShortMessage;

/**
 * The notes that sound. On the wire each key of each channel is struck and released by turns,
 * whatever overlaps above.
 */
final class Voices {
  private final Voice[][] sounding = new Voice[16][128];

  /** Strikes a note; where its key sounds already, that note ends first. */
  void start(Voice voice, int velocity, long now, Sink sink) {
    release(sounding[voice.channel()][voice.key()], now, sink);
    sounding[voice.channel()][voice.key()] = voice;
    sink.send(
        now, MidiEvents.message(ShortMessage.NOTE_ON, voice.channel(), voice.key(), velocity));
  }

  /** Ends a note, unless its key has been struck again or released since. */
  void end(Voice voice, long now, Sink sink) {
    if (sounding[voice.channel()][voice.key()] == voice) {
      release(voice, now, sink);
    }
  }

  /** Ends every note that a test picks. */
  void release(Predicate<Voice> picked, long now, Sink sink) {
    for (Voice[] keys : sounding) {
      for (Voice voice : keys) {
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

  private void release(Voice voice, long now, Sink sink) {
    if (voice != null) {
      sounding[voice.channel()][voice.key()] = null;
      sink.send(now, MidiEvents.message(ShortMessage.NOTE_OFF, voice.channel(), voice.key(), 0));
    }
  }
}
