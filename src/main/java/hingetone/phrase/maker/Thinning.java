package hingetone.phrase.maker;

import hingetone.chart.Fluency;
import hingetone.chart.Form.Bar;
import hingetone.phrase.Tone;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Leaves notes out of a phrase until a player gets round the others at the tempo of their section:
 * the weaker of two that come too fast, never the landing, the ends of a way over a line, or
 * anything of a figure slid over it, which keeps its shape up to its landing.
 */
final class Thinning {
  private final PhraseHarmony harmony;
  private final Beats landing;
  private final Fluency fluency;
  private final Set<Beats> kept = new HashSet<>();

  /**
   * @param landing when the phrase lands, from the start of bar 1
   * @param way the way over a line in it
   */
  Thinning(PhraseHarmony harmony, Beats landing, Fluency fluency, Optional<CrossingPhrase> way) {
    this.harmony = harmony;
    this.landing = landing;
    this.fluency = fluency;
    way.ifPresent(
        there -> {
          if (there.slid()) {
            there.places().forEach(place -> kept.add(place.onset()));
          }
          kept.add(there.start());
          kept.add(there.last().onset());
        });
  }

  /** The notes that are left, one before a gap lengthened over it. */
  List<Tone> of(List<Tone> tones) {
    List<Beats> onsets = new ArrayList<>(new TreeSet<>(tones.stream().map(Tone::onset).toList()));
    tones.stream()
        .filter(tone -> !tone.onset().isPositive() && tone.end().isPositive())
        .map(Tone::onset)
        .forEach(kept::add);
    List<Beats> left = left(onsets);
    if (left.size() == onsets.size()) {
      return tones;
    }
    return tones.stream()
        .filter(tone -> left.contains(tone.onset()))
        .map(tone -> tone.withLength(length(tone, onsets, left)))
        .toList();
  }

  private List<Beats> left(List<Beats> onsets) {
    List<Beats> left = new ArrayList<>();
    Beats last = onsets.get(onsets.size() - 1);
    for (Beats onset : onsets) {
      Beats before = left.isEmpty() ? null : left.get(left.size() - 1);
      if (before == null || hasTime(before, onset)) {
        left.add(onset);
      } else if (weight(onset, last) > weight(before, last)) {
        left.set(left.size() - 1, onset);
      } else if (kept.contains(onset)) {
        left.add(onset);
      }
    }
    return left;
  }

  private boolean hasTime(Beats from, Beats to) {
    Bar bar = harmony.barAt(landing.plus(from));
    double quarters = bar.section().tempo().quartersPerMinute(bar.meter()).toDouble() / 60;
    return quarters <= to.minus(from).toDouble() * fluency.picked();
  }

  /** What must stay counts most, then the last note, what starts a pulse, an eighth. */
  private int weight(Beats onset, Beats last) {
    if (kept.contains(onset)) {
      return 4;
    }
    if (onset.equals(last)) {
      return 3;
    }
    return harmony.isPulse(landing.plus(onset)) ? 2 : onset.times(2).denominator() == 1 ? 1 : 0;
  }

  /** As written, or where the notes after it are left out up to the next that is not. */
  private static Beats length(Tone tone, List<Beats> onsets, List<Beats> left) {
    boolean ledOn = onsets.contains(tone.end()) && !left.contains(tone.end());
    return left.stream()
        .filter(onset -> ledOn && onset.isAfter(tone.onset()))
        .findFirst()
        .map(next -> next.minus(tone.onset()))
        .orElse(tone.length());
  }
}
