package hingetone.take;

import hingetone.midi.Received;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.sound.midi.ShortMessage;

/**
 * Makes notes of the messages of a MIDI instrument, each channel for itself, so that a guitar with
 * a channel for each string bends one string at a time. A pedal holds what is released under it; a
 * note struck again ends the one before; when the instrument is lost all notes end.
 *
 * <p>The pitch wheel reaches two semitones to either side unless the instrument states another
 * range by registered parameter 0 (MIDI 1.0 detailed specification, pitch bend sensitivity).
 *
 * <pre>{@code
 * PlayedNotes notes = new PlayedNotes();
 * notes.take(new Received(0, 0x90, 0, 62, 100));          // → []
 * notes.take(new Received(500_000_000, 0x80, 0, 62, 0));  // → one note, half a second long
 * }</pre>
 */
public final class PlayedNotes {
  private static final int PEDAL = 64;
  private static final int PRESSED = 64;
  private static final int DATA = 6;
  private static final int FINE_DATA = 38;
  private static final int PARAMETER_FINE = 100;
  private static final int PARAMETER = 101;
  private static final int ALL_SOUND_OFF = 120;
  private static final int ALL_CONTROLLERS_OFF = 121;
  private static final int ALL_NOTES_OFF = 123;
  private static final int NO_PARAMETER = 127 * 128 + 127;
  private static final double CENTRE = 8192;

  private record Voice(int channel, int key) {}

  /** A note that sounds, and whether only the pedal holds it. */
  private static final class Sounding {
    final long on;
    final int velocity;
    final List<PlayedNote.Bend> bends = new ArrayList<>();
    boolean held;

    Sounding(long on, int velocity) {
      this.on = on;
      this.velocity = velocity;
    }

    PlayedNote until(Voice voice, long off) {
      return new PlayedNote(on, Math.max(on, off), voice.channel, voice.key, velocity, bends);
    }
  }

  /** What a channel is set to. */
  private static final class Channel {
    int parameter = NO_PARAMETER;
    int semitones = 2;
    int cents;
    double wheel;
    boolean pedal;

    double bend() {
      return wheel * (semitones + cents / 100.0);
    }
  }

  private final Map<Voice, Sounding> sounding = new LinkedHashMap<>();
  private final Map<Integer, Channel> channels = new LinkedHashMap<>();

  /** Takes a message; gives the notes that end with it. */
  public List<PlayedNote> take(Received message) {
    Channel channel = channels.computeIfAbsent(message.channel(), c -> new Channel());
    Voice voice = new Voice(message.channel(), message.first());
    if (message.isNoteOn()) {
      return strike(voice, channel, message);
    }
    if (message.isNoteOff()) {
      return release(voice, channel, message.nanos());
    }
    if (message.command() == ShortMessage.PITCH_BEND) {
      channel.wheel = message.bend() / CENTRE;
      bend(message.channel(), channel, message.nanos());
    } else if (message.command() == ShortMessage.CONTROL_CHANGE) {
      return control(channel, message);
    }
    return List.of();
  }

  /** The notes that sound, in the order in which they were struck, as if they ended now. */
  public List<PlayedNote> sounding(long now) {
    return sounding.entrySet().stream()
        .map(entry -> entry.getValue().until(entry.getKey(), now))
        .toList();
  }

  /**
   * Messages that set up another listener as this one is now: bend ranges, wheels and pedals.
   *
   * @param now when they are said to come
   */
  public List<Received> settings(long now) {
    List<Received> all = new ArrayList<>();
    channels.forEach(
        (number, channel) -> {
          int control = ShortMessage.CONTROL_CHANGE;
          int wheel = (int) Math.round(channel.wheel * CENTRE) + (int) CENTRE;
          all.add(new Received(now, control, number, PARAMETER, 0));
          all.add(new Received(now, control, number, PARAMETER_FINE, 0));
          all.add(new Received(now, control, number, DATA, channel.semitones));
          all.add(new Received(now, control, number, FINE_DATA, channel.cents));
          all.add(new Received(now, control, number, PEDAL, channel.pedal ? 127 : 0));
          all.add(new Received(now, ShortMessage.PITCH_BEND, number, wheel & 127, wheel >> 7));
        });
    return all;
  }

  /** The instrument is gone: all notes end, and nothing is known of its channels any more. */
  public List<PlayedNote> lost(long now) {
    List<PlayedNote> ended = sounding(now);
    sounding.clear();
    channels.clear();
    return ended;
  }

  private List<PlayedNote> strike(Voice voice, Channel channel, Received message) {
    List<PlayedNote> ended = end(voice, message.nanos());
    Sounding note = new Sounding(message.nanos(), message.second());
    if (channel.wheel != 0) {
      note.bends.add(new PlayedNote.Bend(message.nanos(), channel.bend()));
    }
    sounding.put(voice, note);
    return ended;
  }

  private List<PlayedNote> release(Voice voice, Channel channel, long now) {
    Sounding note = sounding.get(voice);
    if (channel.pedal && note != null) {
      note.held = true;
      return List.of();
    }
    return end(voice, now);
  }

  private List<PlayedNote> end(Voice voice, long now) {
    Sounding note = sounding.remove(voice);
    return note == null ? List.of() : List.of(note.until(voice, now));
  }

  private void bend(int number, Channel channel, long now) {
    sounding.forEach(
        (voice, note) -> {
          if (voice.channel == number) {
            note.bends.add(new PlayedNote.Bend(now, channel.bend()));
          }
        });
  }

  private List<PlayedNote> control(Channel channel, Received message) {
    int value = message.second();
    switch (message.first()) {
      case PARAMETER -> channel.parameter = value * 128 + channel.parameter % 128;
      case PARAMETER_FINE -> channel.parameter = channel.parameter / 128 * 128 + value;
      case DATA -> channel.semitones = channel.parameter == 0 ? value : channel.semitones;
      case FINE_DATA -> channel.cents = channel.parameter == 0 ? value : channel.cents;
      case PEDAL -> {
        return pedal(channel, message);
      }
      case ALL_CONTROLLERS_OFF -> {
        channel.wheel = 0;
        bend(message.channel(), channel, message.nanos());
        channel.pedal = false;
        return endAll(message, true);
      }
      case ALL_SOUND_OFF, ALL_NOTES_OFF -> {
        return endAll(message, false);
      }
      default -> {}
    }
    return List.of();
  }

  private List<PlayedNote> pedal(Channel channel, Received message) {
    channel.pedal = message.second() >= PRESSED;
    return channel.pedal ? List.of() : endAll(message, true);
  }

  private List<PlayedNote> endAll(Received message, boolean onlyHeld) {
    List<PlayedNote> ended = new ArrayList<>();
    Iterator<Map.Entry<Voice, Sounding>> all = sounding.entrySet().iterator();
    while (all.hasNext()) {
      Map.Entry<Voice, Sounding> entry = all.next();
      boolean ends = entry.getValue().held || !onlyHeld;
      if (entry.getKey().channel == message.channel() && ends) {
        ended.add(entry.getValue().until(entry.getKey(), message.nanos()));
        all.remove();
      }
    }
    ended.sort(Comparator.comparingLong(PlayedNote::on));
    return ended;
  }
}
