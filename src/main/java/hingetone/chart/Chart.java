package hingetone.chart;

import static java.math.RoundingMode.HALF_UP;

import hingetone.neck.Tuning;
import hingetone.path.CheapestPath;
import hingetone.theory.Key;
import hingetone.time.Tempo;
import java.math.BigDecimal;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * A chart as its file says it: sections and the order in which they are played.
 *
 * @param title what it is called
 * @param sections each section once, in the order of the file
 * @param form the sections as they are played in one lap, at least one
 * @param countIn bars counted before bar 1, 0 or more
 * @param instrument what the player plays: {@code guitar} unless stated, or {@code bass}
 * @param tuning the tuning of that instrument, without the capo
 * @param capo the fret of the capo, 0 for none
 * @param position the fret that the hand stays around; empty where it goes where the way is
 *     shortest
 * @param fluency how fast the player gets
 * @param seed the seed of everything that varies
 */
public record Chart(
    String title,
    List<Section> sections,
    List<Section> form,
    int countIn,
    String instrument,
    Tuning tuning,
    int capo,
    Optional<Integer> position,
    Fluency fluency,
    long seed) {
  /** The highest fret that a hand is said to stay around. */
  public static final int HIGHEST_POSITION = 20;

  public Chart {
    sections = List.copyOf(sections);
    form = List.copyOf(form);
    if (form.isEmpty()) {
      throw new IllegalArgumentException("a chart plays at least one section");
    }
  }

  /** Reads a seed: a whole number of at most 18 digits; empty where it is none. */
  public static Optional<Long> parseSeed(String text) {
    return text.matches("-?[0-9]{1,18}") ? Optional.of(Long.parseLong(text)) : Optional.empty();
  }

  /**
   * The chart a number of semitones up or down: keys spelled with few accidentals and near each
   * other, chords and riffs moved along. Shifted by 5, C minor is F minor and its G7b9 is C7b9.
   */
  public Chart shifted(int semitones) {
    Map<Key, Key> moved = movedKeys(semitones);
    return withSections(section -> section.shifted(semitones, moved.get(section.key())));
  }

  private Map<Key, Key> movedKeys(int semitones) {
    List<Key> keys = sections.stream().map(Section::key).distinct().toList();
    List<Key> moved =
        semitones % 12 == 0
            ? keys
            : CheapestPath.through(
                keys.stream().map(key -> key.spellings(semitones)).toList(),
                (i, key) -> accidentals(keys.get(i), key),
                (i, from, to) -> Math.abs(from.signature() - to.signature()));
    Map<Key, Key> byKey = new HashMap<>();
    for (int i = 0; i < keys.size(); i++) {
      byKey.put(keys.get(i), moved.get(i));
    }
    return byKey;
  }

  /** Sharps or flats in the signature; where all else is equal, rather the sort that it had. */
  private static double accidentals(Key before, Key key) {
    boolean other = before.signature() * key.signature() < 0;
    return Math.abs(key.signature()) + (other ? 0.1 : 0);
  }

  /**
   * The chart at another tempo: the first section of the form takes it, and sections with a tempo
   * of their own keep their proportion to it, within what a tempo can be.
   */
  public Chart withTempo(Tempo tempo) {
    BigDecimal first = form.get(0).tempo().bpm();
    return withSections(
        section ->
            section.withTempo(
                Tempo.nearest(
                    section.tempo().bpm().multiply(tempo.bpm()).divide(first, 3, HALF_UP))));
  }

  /** The chart with one groove, by name or path, for every section. */
  public Chart withGroove(String groove) {
    return withSections(section -> section.withGroove(groove));
  }

  public Chart withTuning(Tuning newTuning) {
    return new Chart(
        title, sections, form, countIn, instrument, newTuning, capo, position, fluency, seed);
  }

  public Chart withCapo(int newCapo) {
    return new Chart(
        title, sections, form, countIn, instrument, tuning, newCapo, position, fluency, seed);
  }

  /** The chart with the hand staying around a fret, or free. */
  public Chart withPosition(Optional<Integer> fret) {
    return new Chart(title, sections, form, countIn, instrument, tuning, capo, fret, fluency, seed);
  }

  /** The chart for a player who gets so fast. */
  public Chart withFluency(Fluency other) {
    return new Chart(
        title, sections, form, countIn, instrument, tuning, capo, position, other, seed);
  }

  public Chart withSeed(long newSeed) {
    return new Chart(
        title, sections, form, countIn, instrument, tuning, capo, position, fluency, newSeed);
  }

  public Chart withCountIn(int bars) {
    return new Chart(
        title, sections, form, bars, instrument, tuning, capo, position, fluency, seed);
  }

  private Chart withSections(UnaryOperator<Section> change) {
    Map<String, Section> changed = new LinkedHashMap<>();
    sections.forEach(section -> changed.put(section.name(), change.apply(section)));
    List<Section> played = form.stream().map(section -> changed.get(section.name())).toList();
    return new Chart(
        title,
        List.copyOf(changed.values()),
        played,
        countIn,
        instrument,
        tuning,
        capo,
        position,
        fluency,
        seed);
  }
}
