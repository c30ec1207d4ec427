package hingetone.sequencer;

import hingetone.midi.ChannelSetup;
import hingetone.midi.MidiEvents;
import hingetone.score.Role;
import hingetone.score.Sound;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import java.util.function.IntPredicate;
import javax.sound.midi.ShortMessage;

/**
 * The channels: programs, levels and mutes. A level never steps: it goes over in small moves.
 *
 * <p>Drums and click share a channel, whose level is the drums'; the click's own level is in its
 * velocities, also where it has a channel of its own.
 */
final class ChannelMixer {
  private static final int VOLUME = 7;
  private static final int PEDAL = 64;
  private static final int ALL_NOTES_OFF = 123;
  private static final int MOST_CHANGE = 3;
  private static final long MOVE_NANOS = 7_000_000;

  private final PlaySetup setup;
  private final boolean volumeByChannel;
  private final Map<Role, Sound> sounds = new EnumMap<>(Role.class);
  private final Map<Role, Integer> levels = new EnumMap<>(Role.class);
  private final Map<Role, Integer> sent = new EnumMap<>(Role.class);
  private final Set<Role> muted = EnumSet.noneOf(Role.class);
  private int volume;
  private long nextMove = Long.MAX_VALUE;

  /**
   * A mixer.
   *
   * @param volumeByChannel whether the level of everything is set channel by channel, as it must be
   *     on a MIDI port
   */
  ChannelMixer(PlaySetup setup, boolean volumeByChannel) {
    this.setup = setup;
    this.volumeByChannel = volumeByChannel;
    this.volume = setup.volume();
    for (Role role : Role.values()) {
      levels.put(role, 100);
    }
  }

  boolean isMuted(Role role) {
    return muted.contains(role);
  }

  Set<Role> muted() {
    return muted;
  }

  Map<Role, Integer> levels() {
    return levels;
  }

  int volume() {
    return volume;
  }

  void mute(Role role, boolean on) {
    if (on) {
      muted.add(role);
    } else {
      muted.remove(role);
    }
  }

  void stepLevel(Role role, int percent, long now) {
    levels.put(role, withinRange(levels.get(role) + percent));
    nextMove = Math.min(nextMove, now);
  }

  void stepVolume(int percent, long now) {
    volume = withinRange(volume + percent);
    nextMove = Math.min(nextMove, now);
  }

  private static int withinRange(int percent) {
    return Math.max(0, Math.min(100, percent));
  }

  /** The velocity a note is struck with. */
  int velocity(Role role, int velocity) {
    return role == Role.CLICK ? Math.max(1, velocity * levels.get(role) / 100) : velocity;
  }

  /**
   * Sets up the channels of parts that are new or sound otherwise than before, and that of a click,
   * which may be switched on at any time.
   */
  void introduce(Map<Role, Sound> parts, long now, MessageSink sink) {
    Map<Role, Sound> all = new EnumMap<>(parts);
    all.putIfAbsent(Role.CLICK, Sound.CLICK);
    for (Role role : ChannelSetup.owners(all.keySet(), setup::channel)) {
      if (!all.get(role).equals(sounds.put(role, all.get(role)))) {
        setUp(role, now, sink);
      }
    }
  }

  /** Sets up every channel again, for a device that has just come back. */
  void repeat(long now, MessageSink sink) {
    sounds.keySet().forEach(role -> setUp(role, now, sink));
  }

  private void setUp(Role role, long now, MessageSink sink) {
    int channel = setup.channel(role);
    Integer bank = setup.banks().get(role);
    if (bank != null) {
      control(channel, 0, bank / 128, now, sink);
      control(channel, 32, bank % 128, now, sink);
    }
    Sound sound = sounds.get(role).withLevel(wanted(role));
    ChannelSetup.of(role, sound, channel).forEach(message -> sink.send(now, message));
    sent.put(role, sound.level());
  }

  private int wanted(Role role) {
    int own = role == Role.CLICK ? 100 : levels.get(role);
    int percent = own * (volumeByChannel ? volume : 100);
    return Math.round(sounds.get(role).level() * percent / 10_000f);
  }

  long nextDue() {
    return nextMove;
  }

  /** Moves every level that is not where it should be a little nearer. */
  void move(long now, MessageSink sink) {
    boolean done = true;
    for (Map.Entry<Role, Integer> entry : sent.entrySet()) {
      int missing = wanted(entry.getKey()) - entry.getValue();
      if (missing != 0) {
        int change = Math.max(-MOST_CHANGE, Math.min(MOST_CHANGE, missing));
        entry.setValue(entry.getValue() + change);
        control(setup.channel(entry.getKey()), VOLUME, entry.getValue(), now, sink);
        done &= change == missing;
      }
    }
    nextMove = done ? Long.MAX_VALUE : now + MOVE_NANOS;
  }

  /** Lifts the pedals and lets every note go on those of the channels in use that a test picks. */
  void letGo(IntPredicate picked, long now, MessageSink sink) {
    sounds.keySet().stream()
        .mapToInt(setup::channel)
        .distinct()
        .filter(picked)
        .forEach(
            channel -> {
              control(channel, PEDAL, 0, now, sink);
              control(channel, ALL_NOTES_OFF, 0, now, sink);
            });
  }

  private static void control(int channel, int controller, int value, long now, MessageSink sink) {
    sink.send(now, MidiEvents.message(ShortMessage.CONTROL_CHANGE, channel, controller, value));
  }
}
