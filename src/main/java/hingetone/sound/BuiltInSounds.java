package hingetone.sound;

import hingetone.midi.MidiEvents;
import java.util.List;
import java.util.Map;
import javax.sound.midi.ShortMessage;

/**
 * What the JDK's emergency bank has instead of the sounds it lacks, and how loud its sounds are.
 *
 * <p>Found by playing one phrase with each program and each drum and measuring it (the tests'
 * {@code BankLoudness} prints the table); the programs of the built-in grooves by playing those
 * ({@code MixMeasure}). The trims make every sound about 2 dB louder than the average of its kind
 * in a common General MIDI SoundFont, drums and all, so that levels written for one serve for the
 * other.
 */
final class BuiltInSounds {
  private static final int PERCUSSION = 9;
  private static final int EXPRESSION = 11;
  private static final int RESET_CONTROLLERS = 121;
  private static final int SIDE_STICK = 37;
  private static final int CLOSED_HAT = 42;
  private static final int LOW_TOM = 41;

  /** Toms come 4 dB louder than the drums around them. */
  private static final double TOM_TRIM = -4;

  /** Keys that have no sound, or the wrong one, and what is played in their place. */
  private static final Map<Integer, Integer> SUBSTITUTES =
      Map.ofEntries(
          // Rides have the crash's sound, and a bell the side stick's.
          Map.entry(51, CLOSED_HAT),
          Map.entry(53, CLOSED_HAT),
          Map.entry(59, CLOSED_HAT),
          // Shaken instruments have the side stick's.
          Map.entry(54, CLOSED_HAT),
          Map.entry(69, CLOSED_HAT),
          Map.entry(70, CLOSED_HAT),
          Map.entry(82, CLOSED_HAT));

  private final int[] programs = new int[16];

  /**
   * The messages that sound as the given one asks: drums that exist, and after a program its trim
   * as expression (controller 11), also after the controllers are reset, which would undo it.
   */
  List<ShortMessage> adapt(ShortMessage message) {
    int channel = message.getChannel();
    if (channel == PERCUSSION) {
      return List.of(adaptDrum(message));
    }
    if (message.getCommand() == ShortMessage.PROGRAM_CHANGE) {
      programs[channel] = message.getData1();
      return List.of(message, expressionMessage(channel));
    }
    boolean reset =
        message.getCommand() == ShortMessage.CONTROL_CHANGE
            && message.getData1() == RESET_CONTROLLERS;
    return reset ? List.of(message, expressionMessage(channel)) : List.of(message);
  }

  private ShortMessage expressionMessage(int channel) {
    return MidiEvents.message(
        ShortMessage.CONTROL_CHANGE, channel, EXPRESSION, expression(programs[channel]));
  }

  private static ShortMessage adaptDrum(ShortMessage message) {
    boolean on = MidiEvents.isNoteOn(message);
    if (!on && !MidiEvents.isNoteOff(message)) {
      return message;
    }
    int key = message.getData1();
    int velocity = on ? velocity(key, message.getData2()) : message.getData2();
    return MidiEvents.message(message.getCommand(), PERCUSSION, drum(key), velocity);
  }

  /** The key to strike for a drum of General MIDI: one that sounds, the nearest in kind. */
  static int drum(int key) {
    boolean silent = key < 35 || key > 82;
    return SUBSTITUTES.getOrDefault(key, silent ? SIDE_STICK : key);
  }

  /** How hard to strike a drum that is asked for with a velocity. */
  static int velocity(int key, int velocity) {
    boolean tom = key >= LOW_TOM && key <= 50 && key != CLOSED_HAT && key != 44 && key != 46;
    return tom && key != 49 ? Math.max(1, scaled(velocity, TOM_TRIM)) : velocity;
  }

  /** The expression (controller 11) that brings a melodic program to its place. */
  static int expression(int program) {
    return scaled(127, trim(program));
  }

  private static double trim(int program) {
    return switch (program) {
      case 5, 8 -> -10; // electric piano 2, celesta
      case 29 -> -9.4; // overdriven guitar
      case 4 -> -7.3; // electric piano 1
      case 30 -> -6.2; // distortion guitar
      case 0 -> -5.7; // acoustic grand
      case 19 -> -8; // church organ
      case 3, 55 -> -5.5; // honky-tonk piano, orchestra hit
      case 34, 38, 39 -> -4.5; // picked and synthetic basses
      case 32 -> -3.4; // acoustic bass
      case 36, 37 -> -3; // slapped basses
      case 33 -> -2.7; // fingered bass
      case 16 -> -1.4; // drawbar organ
      case 35 -> -1; // fretless bass
      case 24, 26, 27 -> 0; // guitars without distortion
      case 48, 50, 51, 52, 53, 54, 85, 91, 127, 118, 119, 122, 125 -> 0;
      default -> -2.2;
    };
  }

  /**
   * A controller or velocity changed by decibels: General MIDI makes the amplitude the square of
   * the value, so 40 dB are a factor of ten.
   */
  private static int scaled(int value, double decibels) {
    return (int) Math.round(value * Math.pow(10, decibels / 40));
  }
}
