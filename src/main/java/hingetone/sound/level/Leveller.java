package hingetone.sound.level;

import hingetone.midi.MidiEvents;
import java.util.Arrays;
import java.util.List;
import java.util.function.Supplier;
import javax.sound.midi.ShortMessage;

/**
 * Makes a bank's sounds as loud as the levels of a band reckon with: each program by the expression
 * of its channel (controller 11), the drum kit by that of the percussion channel, and single drums
 * by their velocity.
 *
 * <p>Everything comes out {@link #GAIN} softer than that, which leaves room to raise what is too
 * soft; who plays the messages multiplies by it. Figures that become known while a channel plays
 * take hold over some notes: a level does not step.
 */
public final class Leveller {
  /** The factor that what is played of the messages is to be multiplied with: 12 dB. */
  public static final float GAIN = (float) Math.pow(10, BankLevels.MOST_RAISED / 20);

  private static final int CHANNELS = 16;
  private static final int PERCUSSION = 9;
  private static final int EXPRESSION = 11;
  private static final int RESET_CONTROLLERS = 121;
  private static final int UNSET = -1;

  /** A change of about 1.5 dB with each note. */
  private static final int MOST_CHANGE = 6;

  private final Supplier<BankLevels> levels;
  private final int[] programs = new int[CHANNELS];
  private final int[] sent = new int[CHANNELS];

  /**
   * A leveller for one synthesizer, since it remembers programs.
   *
   * @param levels the figures of its bank that are known by now
   */
  public Leveller(Supplier<BankLevels> levels) {
    this.levels = levels;
    Arrays.fill(sent, UNSET);
  }

  /** The messages to play instead of one. */
  public List<ShortMessage> adapt(ShortMessage message) {
    int channel = message.getChannel();
    if (message.getCommand() == ShortMessage.PROGRAM_CHANGE) {
      programs[channel] = message.getData1();
      return List.of(message, expression(channel, wanted(channel)));
    }
    if (message.getCommand() == ShortMessage.CONTROL_CHANGE
        && message.getData1() == RESET_CONTROLLERS) {
      return List.of(message, expression(channel, wanted(channel)));
    }
    if (!MidiEvents.isNoteOn(message)) {
      return List.of(message);
    }
    ShortMessage note = channel == PERCUSSION ? drum(message) : message;
    int missing = wanted(channel) - sent[channel];
    if (missing == 0) {
      return List.of(note);
    }
    int change = Math.max(-MOST_CHANGE, Math.min(MOST_CHANGE, missing));
    int next = sent[channel] == UNSET ? wanted(channel) : sent[channel] + change;
    return List.of(expression(channel, next), note);
  }

  private int wanted(int channel) {
    BankLevels known = levels.get();
    double trim = channel == PERCUSSION ? known.kitTrim() : known.trim(programs[channel]);
    return scaled(127, trim - BankLevels.MOST_RAISED);
  }

  private ShortMessage expression(int channel, int value) {
    sent[channel] = value;
    return MidiEvents.message(ShortMessage.CONTROL_CHANGE, channel, EXPRESSION, value);
  }

  private ShortMessage drum(ShortMessage on) {
    int key = on.getData1();
    return MidiEvents.message(
        ShortMessage.NOTE_ON, PERCUSSION, key, scaled(on.getData2(), levels.get().drumTrim(key)));
  }

  /**
   * A controller or velocity changed by decibels, 1 to 127: General MIDI makes the amplitude the
   * square of the value, so 40 dB are a factor of ten.
   */
  private static int scaled(int value, double decibels) {
    long scaled = Math.round(value * Math.pow(10, decibels / 40));
    return (int) Math.max(1, Math.min(127, scaled));
  }
}
