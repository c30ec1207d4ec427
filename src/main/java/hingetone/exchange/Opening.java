package hingetone.exchange;

import hingetone.exchange.Melody.Blank;
import hingetone.theory.Key;
import hingetone.theory.Pitch;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The opening of a statement, fitted to another place: its pickup, its landing and what follows, up
 * to about its middle.
 *
 * @param tones its notes; none where it cannot be fitted
 * @param cut where the new ending starts
 * @param how how it was fitted, as words after "comes back": in another key, moved along the scale
 */
record Opening(List<Tone> tones, Beats cut, String how) {
  private static final Opening NONE = new Opening(List.of(), Beats.ZERO, "");
  private static final List<Integer> STEPS = List.of(0, 1, -1, 2, -2, 3, -3);

  /** Fits a statement's opening to a task: its key, its room, a chord's note to land on. */
  static Opening of(Workbench bench, Task task, Phrase statement) {
    Phrase line = topLine(statement);
    Beats cut = cut(line);
    boolean fits =
        !line.start().negated().isAfter(task.space().before())
            && cut.isBefore(task.space().after())
            && cut.isPositive();
    if (!fits) {
      return NONE;
    }
    Key key = bench.harmony().keyAt(task.space().landing());
    Phrase moved = line.before(cut).inKey(key);
    String how = key.equals(statement.key()) ? "" : " in " + key;
    Set<Integer> landing = bench.harmony().landingTones(task.space().landing());
    return STEPS.stream()
        .flatMap(
            steps ->
                Stream.of(0, 1, -1).map(octave -> opening(moved, key, steps, octave, cut, how)))
        .filter(opening -> opening.fits(key, landing, bench, task))
        .findFirst()
        .orElse(NONE);
  }

  private static Opening opening(
      Phrase moved, Key key, int steps, int octave, Beats cut, String how) {
    Phrase phrase = moved.steps(key.pentatonic(), steps).octaves(octave);
    String along = steps == 0 ? "" : ", moved along the scale";
    String away = octave == 0 ? "" : ", an octave away";
    return new Opening(phrase.tones(), cut, how + along + away);
  }

  /** Whether something of it is left after its landing note. */
  boolean hasBody() {
    return tones.stream().anyMatch(tone -> tone.onset().isPositive());
  }

  /** A note of it as a blank that is decided. */
  static Blank blank(Tone tone) {
    return Blank.of(new Stroke(tone.onset(), tone.length()), tone.reached().midi());
  }

  private boolean fits(Key key, Set<Integer> landing, Workbench bench, Task task) {
    List<Integer> midi = tones.stream().map(t -> t.reached().midi()).toList();
    int main = new Phrase(key, tones).landing().reached().midi();
    return tones.stream().allMatch(t -> inKey(key, t.reached()))
        && landing.contains(Math.floorMod(main, 12))
        && Hand.over(bench.ground().fretboard(), midi, bench.hand(task).low()).isPresent();
  }

  private static boolean inKey(Key key, Pitch pitch) {
    return key.heptatonic().contains(pitch.name()) || key.scale().contains(pitch.name());
  }

  /** The highest of the notes struck together. */
  static Phrase topLine(Phrase phrase) {
    List<Tone> line = new ArrayList<>();
    for (Tone tone : phrase.tones()) {
      if (!line.isEmpty() && line.get(line.size() - 1).onset().equals(tone.onset())) {
        line.remove(line.size() - 1);
      }
      line.add(tone);
    }
    return new Phrase(phrase.key(), line);
  }

  /** Where the opening ends: at the first note past the landing that lies beyond the middle. */
  private static Beats cut(Phrase phrase) {
    Beats middle = phrase.end().dividedBy(2);
    return phrase.tones().stream()
        .map(Tone::onset)
        .filter(onset -> onset.isPositive() && !onset.isBefore(middle))
        .findFirst()
        .orElse(Beats.ZERO);
  }
}
