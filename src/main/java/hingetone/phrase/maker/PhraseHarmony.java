package hingetone.phrase.maker;

import hingetone.chart.Form;
import hingetone.chart.Form.Bar;
import hingetone.ground.Ground;
import hingetone.theory.Chord;
import hingetone.theory.Key;
import hingetone.theory.NoteName;
import hingetone.time.Beats;
import hingetone.time.Meter;
import hingetone.time.Position;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What sounds under a phrase. Times are quarter notes from the start of bar 1, laps counted on.
 *
 * @param ground the ground of a form
 */
record PhraseHarmony(Ground ground) {
  /** Over a power chord or a riff: 1 b3 4 5 b7, common practice. */
  private static final List<Integer> OVER_A_RIFF = List.of(0, 3, 4 + 1, 7, 10);

  Form form() {
    return ground.form();
  }

  Bar barAt(Beats time) {
    return form().bar(form().position(time).bar());
  }

  Key keyAt(Beats time) {
    return barAt(time).key();
  }

  Optional<Chord> chordAt(Beats time) {
    Position position = form().position(time);
    return form().bar(position.bar()).chordAt(position.beat());
  }

  /** All that a note of a time sounds over. */
  ChordUnder under(Beats time) {
    Position position = form().position(time);
    return new ChordUnder(
        keyAt(time),
        chordAt(time),
        ground.scalesAt(position.bar(), position.beat()).get(0).scale(),
        landingTones(time),
        barAt(time).section().isOverRiff());
  }

  /** The pitch classes that a phrase may land on: the chord's notes, in some places a riff's. */
  Set<Integer> landingTones(Beats time) {
    Optional<Chord> chord = chordAt(time);
    if (chord.isEmpty()) {
      return chromas(Stream.of(0, keyAt(time).isMinor() ? 3 : 4, 7), keyAt(time).tonic());
    }
    boolean riff = barAt(time).section().riff().isPresent() || chord.get().quality().isPowerChord();
    boolean minorish = riff && !chord.get().quality().has(4);
    return minorish
        ? chromas(OVER_A_RIFF.stream(), chord.get().root())
        : chord.get().notes().stream().map(NoteName::chroma).collect(Collectors.toSet());
  }

  private static Set<Integer> chromas(Stream<Integer> semitones, NoteName root) {
    return semitones.map(s -> (root.chroma() + s) % 12).collect(Collectors.toSet());
  }

  /** Whether a pulse starts here: a beat, or in meters that count eighths a group of them. */
  boolean isPulse(Beats time) {
    Meter meter = barAt(time).meter();
    Beats beat = form().position(time).beat();
    boolean grouped = meter.denominator() >= 8 && !meter.isCompound();
    return grouped ? meter.isStrong(beat) : beat.denominator() == 1;
  }

  /** What a note is over the chord of its time, for people: {@code the b3 of Cm7}. */
  String heard(int midi, Beats time) {
    Key key = keyAt(time);
    NoteName name = key.spellChroma(Math.floorMod(midi, 12));
    return chordAt(time)
        .flatMap(
            chord ->
                chord
                    .degreeOf(Math.floorMod(midi, 12))
                    .map(degree -> "the " + degree + " of " + chord))
        .orElse(name + ", the " + key.tonic().to(name) + " of the key");
  }
}
