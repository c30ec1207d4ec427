package hingetone.backing;

import hingetone.groove.ChordStyle;
import hingetone.groove.LinePattern;
import hingetone.groove.StepLine;
import hingetone.groove.StrokeSign;
import hingetone.score.Note;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Plays the chords: the lap's voicings in the groove's rhythm, strummed where it is a guitar. */
final class ChordPlayer {
  private static final int UPSTROKE_VOICES = 3;
  private static final int FIFTH = 7;

  /** How early, in quarter notes, a stroke may play the chord that comes: an eighth. */
  private static final Beats PUSH = Beats.of(1, 2);

  private static final Map<Character, Integer> VELOCITIES =
      Map.of(
          StrokeSign.PLAIN,
          84,
          StrokeSign.ACCENT,
          102,
          StrokeSign.GHOST,
          56,
          'm',
          54,
          's',
          84,
          'u',
          74);

  private final LapPlan lap;
  private final Dice dice;
  private final List<List<Integer>> voicings;

  ChordPlayer(LapPlan lap, Dice dice, List<List<Integer>> voicings) {
    this.lap = lap;
    this.dice = dice;
    this.voicings = voicings;
  }

  /** The notes of a lap, swing included, without the player's own riffs. */
  List<Note> play() {
    List<Note> notes = new ArrayList<>();
    for (DrawnNote sign : withEveryChord(cutAtChanges(strokes()))) {
      ChordChanges.Change change = sounding(sign);
      List<Integer> keys = voicings.get(change.index());
      notes.addAll(stroke(sign, sign.sign() == ChordStyle.SIXTH ? withSixth(keys, change) : keys));
    }
    return notes;
  }

  private static List<Integer> withSixth(List<Integer> keys, ChordChanges.Change change) {
    int root = change.chord().map(chord -> chord.root().chroma()).orElse(0);
    return keys.stream().map(k -> Math.floorMod(k - root, 12) == FIFTH ? k + 2 : k).toList();
  }

  private List<DrawnNote> strokes() {
    List<DrawnNote> signs = new ArrayList<>();
    for (BarPlan plan : lap.plans()) {
      if (Riffs.hasChords(plan)) {
        continue;
      }
      PatternChoice.Drawn<LinePattern> drawn =
          new PatternChoice<>(plan.groove().chords().patterns(), dice).at(plan);
      StepLine line = drawn.pattern().strip();
      if (plan.stop()) {
        Beats length = plan.bar().meter().beatLength().dividedBy(2);
        Beats start = plan.bar().start();
        signs.add(new DrawnNote(start, start.plus(length), StrokeSign.ACCENT, plan));
      } else {
        signs = DrawnNote.read(line.signs(drawn.bar(), plan.bar().meter()), plan, signs);
      }
    }
    return signs;
  }

  /**
   * The chord that a stroke plays: the next one already where it comes at most an eighth before the
   * change and is held over it, a push. A rest lasts to its end.
   */
  private ChordChanges.Change sounding(DrawnNote sign) {
    ChordChanges.Change own = lap.harmony().at(sign.start());
    boolean late =
        own.chord().isPresent()
            && sign.start().isAfter(own.start())
            && !sign.start().plus(PUSH).isBefore(own.end());
    if (!late || !sign.end().isAfter(own.end()) || own.end().equals(lap.length())) {
      return own;
    }
    ChordChanges.Change next = lap.harmony().at(own.end());
    return next.chord().isPresent() ? next : own;
  }

  /** A stroke that is held into another chord ends there, and that chord is struck. */
  private List<DrawnNote> cutAtChanges(List<DrawnNote> signs) {
    List<DrawnNote> cut = new ArrayList<>();
    for (DrawnNote sign : signs) {
      DrawnNote rest = sign;
      Beats end = sounding(rest).end();
      while (rest.end().isAfter(end)) {
        cut.add(rest.withEnd(end));
        rest = new DrawnNote(end, rest.end(), StrokeSign.PLAIN, lap.planAt(end));
        end = lap.harmony().at(end).end();
      }
      cut.add(rest);
    }
    return cut;
  }

  /** A chord that the rhythm passes over is struck where it starts. */
  private List<DrawnNote> withEveryChord(List<DrawnNote> signs) {
    Map<Integer, List<DrawnNote>> byChange =
        signs.stream().collect(Collectors.groupingBy(sign -> sounding(sign).index()));
    List<DrawnNote> all = new ArrayList<>();
    for (ChordChanges.Change change : lap.harmony().changes()) {
      List<DrawnNote> strokes = byChange.getOrDefault(change.index(), List.of());
      BarPlan plan = lap.planAt(change.start());
      boolean silent = strokes.stream().allMatch(ChordPlayer::isMuted);
      if (silent && !plan.stop() && !Riffs.hasChords(plan) && change.chord().isPresent()) {
        Beats end = change.start().plus(plan.bar().meter().beatLength()).min(change.end());
        all.add(new DrawnNote(change.start(), end, StrokeSign.PLAIN, plan));
      } else {
        all.addAll(strokes);
      }
    }
    return all;
  }

  private static boolean isMuted(DrawnNote sign) {
    return sign.sign() == ChordStyle.MUTED;
  }

  private List<Note> stroke(DrawnNote sign, List<Integer> keys) {
    ChordStyle style = sign.plan().groove().chords();
    boolean up = sign.sign() == ChordStyle.UP;
    List<Integer> struck =
        up ? keys.subList(Math.max(0, keys.size() - UPSTROKE_VOICES), keys.size()) : keys;
    Beats start = lap.played(sign.start());
    Beats end = sign.end().equals(lap.length()) ? lap.length() : lap.played(sign.end());
    int percent = isMuted(sign) ? 30 : style.soundingPercent();
    Beats length = end.minus(start).times(Beats.of(percent, 100));
    int velocity = sign.plan().velocity(VELOCITIES.get(sign.sign()));
    List<Note> notes = new ArrayList<>();
    for (int i = 0; i < struck.size(); i++) {
      int order = up ? struck.size() - 1 - i : i;
      long micros = 1000L * style.strumMillis() * order / Math.max(1, keys.size() - 1);
      notes.add(new Note(start, length, struck.get(i), velocity, micros));
    }
    return notes;
  }
}
