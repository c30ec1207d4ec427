package hingetone.backing;

import hingetone.groove.ChordStyle;
import hingetone.groove.ChordStyle.Voicing;
import hingetone.theory.Chord;
import hingetone.theory.Interval;
import hingetone.theory.Key;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;

/**
 * The ways to voice one chord in a style: which notes to take and, for each choice, every inversion
 * and drop that lies in the register and is not muddy.
 */
final class Voicings {
  /**
   * The lowest MIDI key on which an interval of 1 to 12 semitones may stand without mud: the low
   * interval limits of arranging, common practice (from memory).
   */
  private static final int[] LOWEST = {0, 52, 51, 48, 46, 46, 46, 34, 43, 41, 41, 41, 0};

  /** What a seventh with a sharp ninth has above its root, within the octave. */
  private static final int[] SHARP_NINE = {0, 4, 7, 10, 3};

  /** Root, third, seventh and, on top, the ninth: how guitarists grip it, common practice. */
  private static final int[] SHARP_NINE_GRIP = {0, 4, 10, 15};

  private final ChordStyle style;

  Voicings(ChordStyle style) {
    this.style = style;
  }

  /** One way to play a chord: its keys from low to high, and how little it is liked. */
  record Choice(List<Integer> keys, double dislike) {}

  /** Every way, at least one. */
  List<Choice> of(Chord chord, Key key) {
    for (int wider = 0; wider <= 24; wider += 3) {
      List<Choice> choices =
          within(chord, key, style.lowest() - wider, style.highest() + wider / 3);
      if (!choices.isEmpty()) {
        return choices;
      }
    }
    throw new IllegalStateException("no voicing of " + chord);
  }

  private List<Choice> within(Chord chord, Key key, int lowest, int highest) {
    List<Choice> choices = new ArrayList<>();
    for (Selection selection : selections(chord, key)) {
      for (int bottom = lowest; bottom <= highest; bottom++) {
        if (selection.chromas.contains(bottom % 12) && mayLieLowest(bottom % 12, chord)) {
          for (List<Integer> keys : shapes(selection.chromas, chord, bottom)) {
            if (keys.get(0) >= lowest && top(keys) <= highest && isClear(keys)) {
              choices.add(new Choice(keys, selection.dislike + harshness(keys)));
            }
          }
        }
      }
    }
    return choices;
  }

  /**
   * A power chord stands on its root, since turned round it is a fourth and sounds like another
   * chord; so does a seventh with a sharp ninth.
   */
  private boolean mayLieLowest(int chroma, Chord chord) {
    boolean onRoot = style.voicing() == Voicing.POWER || isSharpNine(chord);
    return !onRoot || chroma == root(chord);
  }

  /** A seventh with a sharp ninth, in a style that has room for its grip. */
  private boolean isSharpNine(Chord chord) {
    return style.voices() >= SHARP_NINE_GRIP.length
        && chord.quality().intervals().size() == SHARP_NINE.length
        && IntStream.of(SHARP_NINE).allMatch(chord.quality()::has);
  }

  /** Notes to take, as pitch classes, and how little the choice is liked. */
  private record Selection(Set<Integer> chromas, double dislike) {}

  private List<Selection> selections(Chord chord, Key key) {
    if (style.voicing() == Voicing.POWER) {
      return List.of(new Selection(new TreeSet<>(List.of(root(chord), fifth(chord))), 0));
    }
    List<Integer> needed = needed(chord);
    List<Integer> spare = spare(chord, key);
    int room = Math.max(0, style.voices() - needed.size());
    List<Selection> selections = new ArrayList<>();
    for (int mask = 0; mask < 1 << spare.size(); mask++) {
      if (Integer.bitCount(mask) == Math.min(room, spare.size())) {
        Set<Integer> chromas =
            new TreeSet<>(needed.subList(0, Math.min(needed.size(), style.voices())));
        double dislike = 0;
        for (int i = 0; i < spare.size(); i++) {
          if ((mask >> i & 1) == 1) {
            chromas.add(spare.get(i));
            dislike += 0.25 * i;
          }
        }
        selections.add(new Selection(chromas, dislike));
      }
    }
    return selections;
  }

  /** What makes the chord what it is: third (or its suspension), seventh or sixth, alterations. */
  private static List<Integer> needed(Chord chord) {
    Set<Integer> needed = new LinkedHashSet<>();
    addNumbers(needed, chord, 3);
    if (needed.isEmpty()) {
      addNumbers(needed, chord, 4, 2);
    }
    addNumbers(needed, chord, 7, 6);
    for (Interval interval : chord.quality().intervals()) {
      boolean altered = interval.number() == 5 ? interval.semitones() != 7 : interval.number() > 7;
      if (altered) {
        needed.add(chord.root().plus(interval).chroma());
      }
    }
    if (needed.isEmpty()) {
      needed.add(root(chord));
    }
    return List.copyOf(needed);
  }

  private static void addNumbers(Set<Integer> chromas, Chord chord, Integer... numbers) {
    for (Interval interval : chord.quality().intervals()) {
      if (Arrays.asList(numbers).contains(interval.number())) {
        chromas.add(chord.root().plus(interval).chroma());
      }
    }
  }

  /** What may be added, the best first: the root and fifth of a triad, the ninth of the key. */
  private List<Integer> spare(Chord chord, Key key) {
    Set<Integer> spare = new LinkedHashSet<>();
    boolean seventh = chord.quality().intervals().size() > 3;
    int ninth = (root(chord) + 2) % 12;
    boolean plain = chord.quality().intervals().stream().allMatch(i -> i.number() < 8);
    if (seventh) {
      spare.add(fifth(chord));
      if (style.keyTensions() && plain && key.heptatonic().degreeOf(ninth).isPresent()) {
        spare.add(ninth);
      }
      spare.add(root(chord));
    } else {
      spare.add(root(chord));
      spare.add(fifth(chord));
    }
    spare.removeAll(needed(chord));
    return List.copyOf(spare);
  }

  private static int root(Chord chord) {
    return chord.root().chroma();
  }

  private static int fifth(Chord chord) {
    return chord.quality().intervals().stream()
        .filter(i -> i.number() == 5)
        .findFirst()
        .map(i -> chord.root().plus(i).chroma())
        .orElse((root(chord) + 7) % 12);
  }

  /** The close position above a bottom note, and in an open style its drops. */
  private List<List<Integer>> shapes(Set<Integer> chromas, Chord chord, int bottom) {
    if (isSharpNine(chord)) {
      return List.of(IntStream.of(SHARP_NINE_GRIP).map(up -> bottom + up).boxed().toList());
    }
    List<Integer> close = new ArrayList<>();
    for (int key = bottom; close.size() < style.voices(); key++) {
      if (chromas.contains(key % 12)) {
        close.add(key);
      }
    }
    if (style.voicing() == Voicing.POWER) {
      return List.of(close);
    }
    List<List<Integer>> shapes = new ArrayList<>(List.of(close));
    if (style.voicing() != Voicing.CLOSE && close.size() > 2) {
      for (int fromTop = 2; fromTop <= Math.min(3, close.size() - 1); fromTop++) {
        List<Integer> dropped = new ArrayList<>(close);
        int place = close.size() - fromTop;
        dropped.set(place, dropped.get(place) - 12);
        shapes.add(dropped.stream().sorted().toList());
      }
    }
    return shapes;
  }

  /** Whether no two neighbouring notes stand lower than their interval may. */
  static boolean isClear(List<Integer> keys) {
    for (int i = 1; i < keys.size(); i++) {
      int interval = keys.get(i) - keys.get(i - 1);
      if (interval > 0 && interval <= 12 && keys.get(i - 1) < LOWEST[interval]) {
        return false;
      }
    }
    return true;
  }

  /** Half steps at the top and minor ninths stand out. */
  private static double harshness(List<Integer> keys) {
    double harsh = 0;
    int last = keys.size() - 1;
    if (last > 0 && keys.get(last) - keys.get(last - 1) == 1) {
      harsh += 0.8;
    }
    for (int low : keys) {
      harsh += keys.contains(low + 13) ? 0.8 : 0;
    }
    return harsh;
  }

  private static int top(List<Integer> keys) {
    return keys.get(keys.size() - 1);
  }
}
