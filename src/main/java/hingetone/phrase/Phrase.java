package hingetone.phrase;

import hingetone.phrase.ScaleSteps.Rung;
import hingetone.theory.Interval;
import hingetone.theory.Key;
import hingetone.theory.Pitch;
import hingetone.theory.Scale;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.UnaryOperator;

/**
 * A phrase: notes in exact time around their landing, and the key they belong to.
 *
 * <p>Time 0 is the strong beat it lands on; what comes before is its pickup. Every change gives a
 * new phrase:
 *
 * <pre>{@code
 * phrase.inKey(Key.parse("F minor").orElseThrow());   // along the scale
 * phrase.plus(Interval.FIFTH);                        // exactly
 * phrase.shifted(Beats.of(1, 2));                     // an eighth later
 * phrase.before(Beats.of(2)).then(otherEnding);       // another ending
 * }</pre>
 *
 * @param key its key
 * @param tones its notes by onset, at least one
 */
public record Phrase(Key key, List<Tone> tones) {
  private static final Beats THICK = Beats.ONE;

  public Phrase {
    tones =
        tones.stream()
            .sorted(Comparator.comparing(Tone::onset).thenComparing(tone -> tone.pitch().midi()))
            .toList();
    if (tones.isEmpty()) {
      throw new IllegalArgumentException("a phrase has at least one note");
    }
  }

  /** Where it starts, in quarter notes from its landing: 0 or, with a pickup, negative. */
  public Beats start() {
    return tones.get(0).onset();
  }

  /** Where its last note ends. */
  public Beats end() {
    return tones.stream().map(Tone::end).max(Comparator.naturalOrder()).orElseThrow();
  }

  /** From its first note to the end of its last, in quarter notes. */
  public Beats length() {
    return end().minus(start());
  }

  /**
   * Its main note: the one struck on the landing beat, or pushed up to an eighth before it and
   * still sounding then; else the first one after it, else the last of all.
   */
  public Tone landing() {
    Beats push = Beats.of(-1, 2);
    return tones.stream()
        .filter(tone -> !tone.onset().isBefore(push) && tone.end().isPositive())
        .findFirst()
        .orElse(tones.get(tones.size() - 1));
  }

  /** The phrase in another key along the scale: the same degrees, tonics as near as can be. */
  public Phrase inKey(Key to) {
    int up = Math.floorMod(to.tonic().chroma() - key.tonic().chroma() + 6, 12) - 6;
    Pitch tonic = new Pitch(key.tonic(), 4);
    Pitch moved = Pitch.at(to.tonic(), tonic.midi() + up);
    ScaleSteps from = new ScaleSteps(key.heptatonic());
    ScaleSteps into = new ScaleSteps(to.heptatonic());
    int octaves = moved.octave() - 4;
    int size = 7;
    return new Phrase(
        to,
        mapped(
            pitch -> {
              Rung rung = from.of(pitch);
              return into.at(new Rung(rung.step() + size * octaves, rung.raised()), to);
            }));
  }

  /** The phrase moved exactly, its key with it. */
  public Phrase plus(Interval interval) {
    return new Phrase(key.plus(interval), mapped(pitch -> pitch.plus(interval)));
  }

  /** The phrase whole octaves higher, or lower when negative. */
  public Phrase octaves(int octaves) {
    return new Phrase(key, mapped(pitch -> new Pitch(pitch.name(), pitch.octave() + octaves)));
  }

  /** The phrase moved along a scale by steps of it, its rhythm and key kept. */
  public Phrase steps(Scale scale, int steps) {
    ScaleSteps ladder = new ScaleSteps(scale);
    return new Phrase(
        key,
        mapped(
            pitch -> {
              Rung rung = ladder.of(pitch);
              return ladder.at(new Rung(rung.step() + steps, rung.raised()), key);
            }));
  }

  /** The phrase displaced: every note later by so many quarter notes, or earlier. */
  public Phrase shifted(Beats quarters) {
    return withTones(
        tones.stream().map(tone -> tone.withOnset(tone.onset().plus(quarters))).toList());
  }

  /**
   * The phrase as a figure, played again and again every {@code period} quarter notes, whether that
   * is longer or shorter than a bar. Notes are cut where the next round starts.
   */
  public Phrase repeated(Beats period, int times) {
    List<Tone> all = new ArrayList<>();
    for (int round = 0; round < times; round++) {
      Beats later = period.times(round);
      Beats next = start().plus(period);
      for (Tone tone : tones) {
        if (tone.onset().isBefore(next)) {
          Beats length = tone.length().min(next.minus(tone.onset()));
          all.add(tone.withOnset(tone.onset().plus(later)).withLength(length));
        }
      }
    }
    return withTones(all);
  }

  /** Its opening: the notes that start before a place, cut there. The place is past its start. */
  public Phrase before(Beats place) {
    return withTones(
        tones.stream()
            .filter(tone -> tone.onset().isBefore(place))
            .map(tone -> tone.withLength(tone.length().min(place.minus(tone.onset()))))
            .toList());
  }

  /** The phrase with another ending after it. */
  public Phrase then(List<Tone> ending) {
    List<Tone> all = new ArrayList<>(tones);
    all.addAll(ending);
    return withTones(all);
  }

  /**
   * The phrase upside down: each step along the scale turned the other way round its landing. Notes
   * between two of the scale count as the lower one, bent notes as those they reach.
   */
  public Phrase mirrored(Scale scale) {
    ScaleSteps ladder = new ScaleSteps(scale);
    int axis = ladder.of(landing().reached()).step();
    return withTones(
        tones.stream()
            .map(t -> t.withPitch(ladder.at(2 * axis - ladder.of(t.reached()).step())))
            .toList());
  }

  /**
   * The phrase with fewer notes: only its landing, its outer notes and those on whole beats. A note
   * rings on over those left out after it, as long as there was no rest between them.
   */
  public Phrase thinned(Beats beat) {
    Tone landing = landing();
    Tone last = tones.get(tones.size() - 1);
    List<Tone> kept = new ArrayList<>();
    for (Tone tone : tones) {
      int before = kept.size() - 1;
      if (tone.equals(landing)
          || tone.onset().equals(start())
          || tone.equals(last)
          || tone.onset().modulo(beat).isZero()) {
        kept.add(tone);
      } else if (kept.get(before).end().equals(tone.onset())) {
        kept.set(before, kept.get(before).withLength(tone.end().minus(kept.get(before).onset())));
      }
    }
    return withTones(kept);
  }

  /**
   * The phrase with more notes: each note of a quarter and longer is left half way for the scale
   * note next to it towards the note that follows. The last one stays, and one that is held over
   * the landing.
   */
  public Phrase thickened(Scale scale) {
    ScaleSteps ladder = new ScaleSteps(scale);
    List<Tone> all = new ArrayList<>();
    for (int i = 0; i < tones.size(); i++) {
      Tone tone = tones.get(i);
      boolean held = tone.onset().isNegative() && !tone.end().isNegative();
      boolean splits =
          i + 1 < tones.size() && !held && !tone.length().isBefore(THICK) && !isDouble(i);
      if (!splits) {
        all.add(tone);
        continue;
      }
      Beats half = tone.length().dividedBy(2);
      int up = tones.get(i + 1).pitch().midi() >= tone.pitch().midi() ? 1 : -1;
      Pitch next = ladder.at(ladder.of(tone.pitch()).step() + up);
      all.add(tone.withLength(half));
      all.add(Tone.of(tone.onset().plus(half), half, next));
    }
    return withTones(all);
  }

  private boolean isDouble(int i) {
    Beats onset = tones.get(i).onset();
    return tones.stream().filter(tone -> tone.onset().equals(onset)).count() > 1;
  }

  private Phrase withTones(List<Tone> newTones) {
    return new Phrase(key, newTones);
  }

  private List<Tone> mapped(UnaryOperator<Pitch> change) {
    return tones.stream()
        .map(
            tone ->
                new Tone(
                    tone.onset(),
                    tone.length(),
                    change.apply(tone.pitch()),
                    tone.bend().map(change)))
        .toList();
  }
}
