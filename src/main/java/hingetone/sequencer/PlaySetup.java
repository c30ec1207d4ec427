package hingetone.sequencer;

import hingetone.score.Role;
import java.util.Map;
import java.util.OptionalInt;

/**
 * What is settled before playing.
 *
 * @param laps after how many laps it ends; empty for never
 * @param endingBars how many bars of one more lap are the ending, 0 for none
 * @param channels the MIDI channel of a part, 0 to 15, where it is not the usual one
 * @param banks the bank of a part on a MIDI port, 0 to 16,383, where one is to be selected
 * @param midiClock whether a MIDI port gets clock, start, stop, continue and song position
 * @param volume the level of everything to begin with, in percent
 */
public record PlaySetup(
    OptionalInt laps,
    int endingBars,
    Map<Role, Integer> channels,
    Map<Role, Integer> banks,
    boolean midiClock,
    int volume) {
  /** Where a player should begin: moderate, to be turned up by choice. In percent. */
  public static final int MODERATE_VOLUME = 60;

  /** Plays until told to stop, on the usual channels, with clock, at a moderate level. */
  public static final PlaySetup USUAL =
      new PlaySetup(OptionalInt.empty(), 0, Map.of(), Map.of(), true, MODERATE_VOLUME);

  public PlaySetup {
    channels = Map.copyOf(channels);
    banks = Map.copyOf(banks);
    boolean known =
        channels.values().stream().allMatch(c -> c >= 0 && c <= 15)
            && banks.values().stream().allMatch(b -> b >= 0 && b <= 16_383)
            && volume >= 0
            && volume <= 100;
    if (!known || endingBars < 0 || laps.isPresent() && laps.getAsInt() < 1) {
      throw new IllegalArgumentException("no such setup: " + this);
    }
  }

  public PlaySetup withLaps(int count) {
    return new PlaySetup(OptionalInt.of(count), endingBars, channels, banks, midiClock, volume);
  }

  /** After the last lap so many bars of the next one are played, without beginning a pass. */
  public PlaySetup withEnding(int bars) {
    return new PlaySetup(laps, bars, channels, banks, midiClock, volume);
  }

  public PlaySetup withChannels(Map<Role, Integer> other) {
    return new PlaySetup(laps, endingBars, other, banks, midiClock, volume);
  }

  public PlaySetup withBanks(Map<Role, Integer> other) {
    return new PlaySetup(laps, endingBars, channels, other, midiClock, volume);
  }

  public PlaySetup withoutMidiClock() {
    return new PlaySetup(laps, endingBars, channels, banks, false, volume);
  }

  public PlaySetup withVolume(int percent) {
    return new PlaySetup(laps, endingBars, channels, banks, midiClock, percent);
  }

  int channel(Role role) {
    return channels.getOrDefault(role, role.channel());
  }
}
