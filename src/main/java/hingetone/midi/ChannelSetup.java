package hingetone.midi;

import hingetone.score.Mark;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.score.Sound;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToIntFunction;
import javax.sound.midi.ShortMessage;

/**
 * What sets the channels up, and when their sounds change: the one place that decides it, for the
 * sequencer, for sound files and for MIDI files.
 *
 * <p>A channel is set up by one part. Where parts share one, as drums and click do, it is the first
 * that is no click: a click is heard through the drums' level, place and room.
 */
public final class ChannelSetup {
  /** How long before its place a sound changes, for notes that are played early. */
  public static final long EARLY_MICROS = 30_000;

  private static final int LEVEL = 7;
  private static final int PAN = 10;
  private static final int REVERB = 91;

  private ChannelSetup() {}

  /**
   * Of the roles of a band those that set their channels up, in the same order.
   *
   * @param channels the MIDI channel of a role, 0 to 15
   */
  public static List<Role> owners(Collection<Role> roles, ToIntFunction<Role> channels) {
    Map<Integer, Role> owners = new LinkedHashMap<>();
    for (Role role : roles) {
      owners.merge(
          channels.applyAsInt(role), role, (first, other) -> first == Role.CLICK ? other : first);
    }
    return List.copyOf(owners.values());
  }

  /** Level, pan, reverb, then the program (drums and clicks take the standard kit). */
  public static List<ShortMessage> of(Role role, Sound sound, int channel) {
    int program = role.isPercussion() ? 0 : sound.program();
    return List.of(
        MidiEvents.message(ShortMessage.CONTROL_CHANGE, channel, LEVEL, sound.level()),
        MidiEvents.message(ShortMessage.CONTROL_CHANGE, channel, PAN, sound.pan()),
        MidiEvents.message(ShortMessage.CONTROL_CHANGE, channel, REVERB, sound.reverb()),
        MidiEvents.message(ShortMessage.PROGRAM_CHANGE, channel, program, 0));
  }

  /**
   * Every set-up of a score's channels on the usual channels: at its start, then a little before
   * each place where the score has a sound change.
   */
  public static List<TimedMessage> of(Score score) {
    List<TimedMessage> messages = new ArrayList<>();
    for (Role role : owners(score.parts().stream().map(Part::role).toList(), Role::channel)) {
      for (Mark.OfSound mark : score.sounds(role)) {
        of(role, mark.sound(), role.channel())
            .forEach(
                message -> messages.add(new TimedMessage(mark.at(), -EARLY_MICROS, role, message)));
      }
    }
    return messages;
  }
}
