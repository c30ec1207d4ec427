package hingetone.ground.scales;

import hingetone.chart.ChartBar;
import hingetone.chart.Form;
import hingetone.chart.Section;
import hingetone.ground.scales.ImpliedKey.Role;
import hingetone.theory.Chord;
import hingetone.theory.Interval;
import hingetone.theory.Key;
import hingetone.theory.NoteName;
import hingetone.theory.ScaleType;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Puts each chord of a form in its place: what is before and after it, which keys it is heard in.
 */
public final class ChordContexts {
  private record Slot(int bar, Section section, int place, ChartBar.Slot slot) {
    Optional<Chord> chord() {
      return slot.chord();
    }
  }

  /** A key whatever its spelling. */
  private record Sound(int tonic, ScaleType mode) {
    static Sound of(Key key) {
      return new Sound(key.tonic().chroma(), key.mode());
    }
  }

  private final List<Slot> slots = new ArrayList<>();
  private final int[] before;
  private final int[] after;
  private final Map<Section, Optional<ImpliedKey>> riffs = new HashMap<>();

  private ChordContexts(Form form) {
    for (Form.Bar bar : form.bars()) {
      for (ChartBar.Slot slot : bar.chords().chords()) {
        slots.add(new Slot(bar.number(), bar.section(), bar.place(), slot));
      }
    }
    after = neighbours(1);
    before = neighbours(-1);
  }

  /** The settings of a form: for each bar those of its chords, in order. */
  public static List<List<ChordContext>> of(Form form) {
    ChordContexts settings = new ChordContexts(form);
    List<List<ChordContext>> all = new ArrayList<>();
    for (int i = 0; i < settings.slots.size(); i++) {
      if (all.size() < settings.slots.get(i).bar) {
        all.add(new ArrayList<>());
      }
      all.get(all.size() - 1).add(settings.at(i));
    }
    return all;
  }

  /**
   * For each slot the nearest one, that way round the lap, with another chord; itself where there
   * is none. Walking against the direction, and twice round, each is known from the one beside it.
   */
  private int[] neighbours(int direction) {
    int n = slots.size();
    int[] found = new int[n];
    for (int i = 0; i < n; i++) {
      found[i] = i;
    }
    for (int step = 2 * n; step > 0; step--) {
      int here = Math.floorMod(direction * step, n);
      int beside = Math.floorMod(here + direction, n);
      boolean same = slots.get(beside).chord().equals(slots.get(here).chord());
      boolean silent = slots.get(beside).chord().isEmpty();
      if (same || silent) {
        boolean useful = !slots.get(found[beside]).chord().equals(slots.get(here).chord());
        found[here] = useful && found[beside] != beside ? found[beside] : here;
      } else {
        found[here] = beside;
      }
    }
    return found;
  }

  private ChordContext at(int i) {
    Slot slot = slots.get(i);
    Set<Integer> neighbours = new TreeSet<>();
    for (int beside : List.of(before[i], after[i])) {
      if (beside != i && slots.get(beside).section.equals(slot.section)) {
        slots
            .get(beside)
            .chord()
            .ifPresent(c -> neighbours.addAll(ImpliedKey.chromas(c.notes().stream())));
      }
    }
    boolean pulls = slot.chord().filter(c -> pulls(i, c)).isPresent();
    boolean overRiff = slot.section.isOverRiff();
    return new ChordContext(slot.chord(), pulls, function(i), homes(i), neighbours, overRiff);
  }

  private Optional<ChordFunction> function(int i) {
    Slot slot = slots.get(i);
    Optional<Chord> next = after[i] == i ? Optional.empty() : slots.get(after[i]).chord();
    return slot.chord().flatMap(chord -> ChordFunction.of(slot.section.key(), chord, next));
  }

  /** Whether a chord is a dominant: of the chord after it, or the fifth degree of its own key. */
  private boolean pulls(int i, Chord chord) {
    NoteName fifth = slots.get(i).section.key().tonic().plus(Interval.FIFTH);
    return weightOfResolution(i, chord) > 0
        || (isDominant(chord) && chord.root().soundsLike(fifth));
  }

  private List<ImpliedKey> homes(int i) {
    Slot slot = slots.get(i);
    if (slot.chord().isEmpty()) {
      return List.of(new ImpliedKey(slot.section.key(), 1, Role.OWN));
    }
    Chord chord = slot.chord().get();
    Key own = slot.section.key();
    Optional<ImpliedKey> resolution = resolution(i, chord);
    boolean bluesTonic =
        resolution.isEmpty() && isSeventh(chord) && chord.root().soundsLike(own.tonic());
    Key heard = bluesTonic ? new Key(own.tonic(), ScaleType.named("blues")) : own;
    List<ImpliedKey> homes = new ArrayList<>();
    double belonging = chord.quality().isPowerChord() ? 1 : ImpliedKey.belonging(heard, chord);
    homes.add(new ImpliedKey(heard, Weights.OWN_KEY * square(belonging), Role.OWN));
    resolution.ifPresent(homes::add);
    boolean ownTonic = bluesTonic || function(i).equals(Optional.of(ChordFunction.PHRYGIAN_TONIC));
    if (resolution.isEmpty() && !ownTonic) {
      preparing(i, chord).or(() -> borrowed(own, chord)).ifPresent(homes::add);
    }
    leading(i, chord).ifPresent(homes::add);
    riffs.computeIfAbsent(slot.section, ChordContexts::riff).ifPresent(homes::add);
    return merged(homes);
  }

  /**
   * A dominant whose root falls a fifth, or a semitone, to the next chord's. One that belongs to
   * its own key wholly is heard there, and does not pull into another.
   */
  private Optional<ImpliedKey> resolution(int i, Chord chord) {
    double weight = weightOfResolution(i, chord);
    if (weight == 0) {
      return Optional.empty();
    }
    Slot next = slots.get(after[i]);
    NoteName tonic = next.chord().orElseThrow().root();
    Key key =
        next.section.key().tonic().soundsLike(tonic)
            ? next.section.key()
            : new Key(tonic, ScaleType.named(isMinor(next.chord().get()) ? "minor" : "major"));
    Key own = slots.get(i).section.key();
    boolean explained =
        !Sound.of(key).equals(Sound.of(own)) && ImpliedKey.belonging(own, chord) == 1;
    return explained ? Optional.empty() : Optional.of(new ImpliedKey(key, weight, Role.DOMINANT));
  }

  /**
   * How strongly a chord pulls to the next one's root: 0 where it is no dominant of it, or where
   * both are sevenths on the first and fourth degree, which is a blues at home.
   */
  private double weightOfResolution(int i, Chord chord) {
    Optional<Chord> next = slots.get(after[i]).chord();
    if (!isDominant(chord) || next.isEmpty() || after[i] == i) {
      return 0;
    }
    boolean onTonic = chord.root().soundsLike(slots.get(i).section.key().tonic());
    if (onTonic && isSeventh(chord) && isSeventh(next.get())) {
      return 0;
    }
    int fall = fall(chord, next.get());
    return fall == 7 ? Weights.RESOLUTION : fall == 1 ? Weights.TRITONE_RESOLUTION : 0;
  }

  private static int fall(Chord chord, Chord next) {
    return Math.floorMod(chord.root().chroma() - next.root().chroma(), 12);
  }

  /** The second degree before a dominant that leads away: F#m7b5 before B7 and Em in C major. */
  private Optional<ImpliedKey> preparing(int i, Chord chord) {
    Optional<Chord> next = slots.get(after[i]).chord();
    boolean foreign = ImpliedKey.belonging(slots.get(i).section.key(), chord) < 1;
    if (!foreign || next.isEmpty() || fall(chord, next.get()) != 7) {
      return Optional.empty();
    }
    return resolution(after[i], next.get())
        .filter(goal -> ImpliedKey.belonging(goal.key(), chord) == 1)
        .map(goal -> new ImpliedKey(goal.key(), Weights.PREPARING, Role.PREPARING));
  }

  private static Optional<ImpliedKey> borrowed(Key own, Chord chord) {
    return ImpliedKey.lending(own, chord)
        .map(key -> new ImpliedKey(key, Weights.BORROWED, Role.BORROWED));
  }

  /** The last chord before another section's key, as far as it belongs there. */
  private Optional<ImpliedKey> leading(int i, Chord chord) {
    int next = (i + 1) % slots.size();
    while (next != i
        && slots.get(next).place == slots.get(i).place
        && slots.get(next).chord().equals(slots.get(i).chord())) {
      next = (next + 1) % slots.size();
    }
    Key key = slots.get(next).section.key();
    boolean changes =
        slots.get(next).place != slots.get(i).place
            && !Sound.of(key).equals(Sound.of(slots.get(i).section.key()));
    double belonging = Math.max(0, 2 * ImpliedKey.belonging(key, chord) - 1);
    double weight = Weights.LEADING_ON * square(belonging);
    return changes && weight > 0
        ? Optional.of(new ImpliedKey(key, weight, Role.LEADING))
        : Optional.empty();
  }

  /** The root of a chord that fills more than half of a section, felt as a tonic. */
  private static Optional<ImpliedKey> riff(Section section) {
    Map<Optional<Chord>, Beats> lengths = new HashMap<>();
    section
        .bars()
        .forEach(
            bar -> bar.chords().forEach(s -> lengths.merge(s.chord(), s.beats(), Beats::plus)));
    Beats all = lengths.values().stream().reduce(Beats.ZERO, Beats::plus);
    return lengths.entrySet().stream()
        .filter(e -> e.getKey().isPresent())
        .max(Comparator.comparing(Map.Entry::getValue))
        .map(e -> new ImpliedKey(riffKey(section, e.getKey().get()), riffWeight(e, all), Role.RIFF))
        .filter(home -> home.weight() > 0);
  }

  private static double riffWeight(Map.Entry<Optional<Chord>, Beats> longest, Beats all) {
    return Weights.RIFF * (2 * longest.getValue().dividedBy(all).toDouble() - 1);
  }

  private static Key riffKey(Section section, Chord chord) {
    if (section.key().tonic().soundsLike(chord.root())) {
      return section.key();
    }
    String mode = isMinor(chord) ? "dorian" : isDominant(chord) ? "mixolydian" : "major";
    return new Key(chord.root(), ScaleType.named(mode));
  }

  private static List<ImpliedKey> merged(List<ImpliedKey> homes) {
    Map<Sound, ImpliedKey> bySound = new java.util.LinkedHashMap<>();
    double sum = homes.stream().mapToDouble(ImpliedKey::weight).sum();
    for (ImpliedKey home : homes) {
      ImpliedKey share =
          new ImpliedKey(home.key(), sum == 0 ? 1 : home.weight() / sum, home.role());
      bySound.merge(
          Sound.of(share.key()),
          share,
          (a, b) -> new ImpliedKey(a.key(), a.weight() + b.weight(), a.role()));
    }
    return bySound.values().stream()
        .sorted(Comparator.comparingDouble(ImpliedKey::weight).reversed())
        .toList();
  }

  /** A major third and a minor seventh, or no seventh at all: what can pull to a tonic. */
  static boolean isDominant(Chord chord) {
    return chord.isDominant();
  }

  /** A dominant with its seventh. */
  static boolean isSeventh(Chord chord) {
    return isDominant(chord) && chord.quality().has(10);
  }

  static boolean isMinor(Chord chord) {
    return chord.quality().has(3) && !chord.quality().has(4);
  }

  private static double square(double x) {
    return x * x;
  }
}
