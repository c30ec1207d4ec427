package hingetone.sequencer;

import hingetone.score.Role;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import javax.sound.midi.ShortMessage;

/**
 * Listens to a {@link NumberedBand} and works out, from the beats told and the changes made and
 * without the sequencer, which notes must start at a beat and which bars may follow which.
 */
final class Witness implements MessageSink {
  private static final int TOP = 0;

  final List<Rig.Sent> sent = new ArrayList<>();
  final Set<Role> muted = EnumSet.noneOf(Role.class);
  Command.SilentBars silent = Command.SilentBars.NONE;
  Optional<Command.Loop> loop = Optional.empty();
  OptionalInt target = OptionalInt.of(TOP);
  int band;
  boolean playing;
  int bar;
  int finished;

  /** Whether since the latest beat nothing moved the time: then the chord's place is known. */
  boolean steady;

  /** Whether the bar may end before its last beat, as when play goes on elsewhere. */
  boolean brokenOff = true;

  private final OptionalInt lastBar;
  private final boolean prompt;
  private final StringBuilder wrong = new StringBuilder();
  private final TreeMap<Long, List<Integer>> expected = new TreeMap<>();
  private final List<Rig.Sent> chords = new ArrayList<>();
  private final Set<Integer> sounding = new TreeSet<>();
  private final Set<Integer> laps = new TreeSet<>();
  private int barsPlayed;
  private int beat;
  private int keyShift;

  // What holds for the latest beat told.
  private boolean chordDue;
  private int lapDue;
  private int keyShiftDue;
  private long beatAt;

  /** What held when the bar began. */
  private Command.SilentBars silentHere = Command.SilentBars.NONE;

  private int bandHere;

  /**
   * A witness of one sitting.
   *
   * @param lastBar after which it is over
   * @param prompt whether laps are made at once; if not, an earlier one may stand in for one, and a
   *     jump may wait for its lap
   */
  Witness(OptionalInt lastBar, boolean prompt) {
    this.lastBar = lastBar;
    this.prompt = prompt;
  }

  /** What should not have happened; empty when all was well. */
  String wrong() {
    return wrong.toString();
  }

  int barsPlayed() {
    return barsPlayed;
  }

  /** The keys that sound, channel by channel. */
  Set<Integer> sounding() {
    return sounding;
  }

  /** How many different laps were heard. */
  int lapsPlayed() {
    return laps.size();
  }

  /** The music stands at the top. */
  void stopped() {
    playing = false;
    target = OptionalInt.of(TOP);
    brokenOff = true;
  }

  @Override
  public void send(long due, ShortMessage message) {
    Rig.Sent last = new Rig.Sent(due, message);
    sent.add(last);
    int key = message.getChannel() * 128 + message.getData1();
    if (last.isNoteOn()) {
      sounding.add(key);
    } else if (last.isNoteOff()) {
      sounding.remove(key);
    }
    if (last.isNoteOn() && message.getChannel() == Role.CHORDS.channel()) {
      chords.add(last);
    }
  }

  @Override
  public void tell(SequencerEvent moment) {
    if (moment instanceof SequencerEvent.BarLine line) {
      barLine(line);
    } else if (moment instanceof SequencerEvent.Beat b) {
      beat(b);
    } else if (moment instanceof SequencerEvent.Finished) {
      finished();
    }
  }

  private void barLine(SequencerEvent.BarLine line) {
    if (beat != 4 && !brokenOff) {
      wrong.append(" bar ").append(bar).append(" ended at beat ").append(beat);
    }
    boolean asked = target.isPresent() && line.bar() == target.getAsInt();
    boolean mayWait = target.isPresent() && !prompt && !brokenOff;
    if (!asked && (target.isPresent() && !mayWait || line.bar() != following() || isOver())) {
      wrong.append(" after bar ").append(bar).append(" came ").append(line.bar());
    }
    target = asked ? OptionalInt.empty() : target;
    bar = line.bar();
    beat = 0;
    keyShift = line.keyShift();
    silentHere = silent;
    bandHere = band;
    barsPlayed++;
    laps.add(NumberedBand.lapOf(bar));
  }

  private int following() {
    return loopEnds() ? loop.orElseThrow().firstBar() : bar + 1;
  }

  private boolean loopEnds() {
    return loop.isPresent() && bar >= loop.get().lastBar();
  }

  private boolean isOver() {
    return lastBar.isPresent() && bar >= lastBar.getAsInt() && target.isEmpty() && !loopEnds();
  }

  private void finished() {
    if (!isOver() || beat != 4 && !brokenOff) {
      wrong.append(" the end came after bar ").append(bar).append(" beat ").append(beat);
    }
    finished++;
    stopped();
  }

  private void beat(SequencerEvent.Beat b) {
    int number = (int) b.position().beat().numerator();
    if (b.position().bar() != bar || number != beat + 1) {
      wrong.append(" beat ").append(b.position()).append(" after bar ").append(bar);
    }
    checkChord(b.nanos());
    beat = number;
    brokenOff = false;
    beatAt = b.nanos();
    steady = true;
    lapDue = NumberedBand.lapOf(bar);
    keyShiftDue = keyShift;
    boolean counts = bar < 1;
    chordDue = !counts && !silentHere.isSilent(bar);
    List<Integer> keys = new ArrayList<>();
    if (counts) {
      keys.add(9 * 128 + (number == 1 ? 76 : 77));
    }
    if (chordDue && !muted.contains(Role.DRUMS)) {
      keys.add(9 * 128 + NumberedBand.drum(bandHere, bar, number));
    }
    if (chordDue && !muted.contains(Role.BASS)) {
      keys.add(128 + NumberedBand.bass(bandHere, bar, number) + keyShift);
    }
    keys.sort(null);
    if (!keys.isEmpty()) {
      expected.put(b.nanos(), keys);
    }
  }

  /** Between two beats came the one chord of the first, a third of a beat after it. */
  private void checkChord(long nextBeat) {
    List<Integer> laps = chords.stream().map(this::lapOf).toList();
    if (!brokenOff && laps.size() != (chordDue ? 1 : 0)) {
      wrong.append(" chords ").append(laps.size()).append(" in bar ").append(bar);
    } else if (!brokenOff && chordDue && laps.get(0) == 0) {
      wrong.append(" another lap's chord in bar ").append(bar);
    } else if (!brokenOff && chordDue && steady) {
      long spread = NumberedBand.spread(laps.get(0)) * 1000;
      long due = beatAt + Math.round((nextBeat - beatAt) / 3.0) + spread;
      if (Math.abs(chords.get(0).due() - due) > 2) {
        wrong.append(" chord in bar ").append(bar).append(" at ").append(chords.get(0).due());
      }
    }
    chords.clear();
  }

  /** Which lap's chord it is; 0 for none that may be heard here. */
  private int lapOf(Rig.Sent chord) {
    int key = chord.message().getData1() - keyShiftDue;
    return (prompt ? List.of(lapDue) : List.of(lapDue, lapDue - 1, 1))
        .stream().filter(l -> NumberedBand.chord(l) == key).findFirst().orElse(0);
  }

  /** When which drums and basses must have started, the keys of one moment in order. */
  TreeMap<Long, List<Integer>> expected() {
    return expected;
  }

  /** When which drums and basses started, the keys of one moment in order. */
  TreeMap<Long, List<Integer>> strikes() {
    TreeMap<Long, List<Integer>> strikes = new TreeMap<>();
    for (Rig.Sent s : sent) {
      if (s.isNoteOn() && s.message().getChannel() != Role.CHORDS.channel()) {
        int key = s.message().getChannel() * 128 + s.message().getData1();
        strikes.computeIfAbsent(s.due(), d -> new ArrayList<>()).add(key);
      }
    }
    strikes.values().forEach(keys -> keys.sort(null));
    return strikes;
  }

  /** The messages that came before an earlier one. */
  List<String> outOfOrder() {
    List<String> wrong = new ArrayList<>();
    for (int i = 1; i < sent.size(); i++) {
      if (sent.get(i).due() < sent.get(i - 1).due()) {
        wrong.add(sent.get(i).line());
      }
    }
    return wrong;
  }
}
