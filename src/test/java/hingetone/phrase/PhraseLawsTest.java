package hingetone.phrase;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.theory.Interval;
import hingetone.theory.Key;
import hingetone.theory.NoteName;
import hingetone.theory.Pitch;
import hingetone.theory.Scale;
import hingetone.theory.ScaleType;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.BiConsumer;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The laws of what can be done to a phrase, over random phrases; a failure names its seed. */
class PhraseLawsTest {
  private static final long FIRST_SEED = 41;
  private static final int ROUNDS = 400;

  /** A law over phrases of the scale, and over phrases with chromatic notes and bends as well. */
  private static void forAll(boolean inScale, BiConsumer<Phrase, Random> law) {
    for (long seed = FIRST_SEED; seed < FIRST_SEED + ROUNDS; seed++) {
      Random random = new Random(seed);
      Phrase phrase = phrase(random, inScale);
      try {
        law.accept(phrase, random);
      } catch (RuntimeException | AssertionError e) {
        throw new AssertionError("seed " + seed + ": " + phrase, e);
      }
    }
  }

  private static void forAll(BiConsumer<Phrase, Random> law) {
    forAll(false, law);
    forAll(true, law);
  }

  /** A pickup of up to a bar, then up to ten notes with rests between, now and then two at once. */
  private static Phrase phrase(Random random, boolean inScale) {
    Key key = new Key(NoteName.ofFifths(random.nextInt(12) - 5), mode(random));
    List<Tone> tones = new ArrayList<>();
    Beats onset = Beats.of(-random.nextInt(9), 2);
    for (int left = 2 + random.nextInt(9); left > 0; left--) {
      Beats length = Beats.of(1 + random.nextInt(8), 4);
      Pitch pitch = pitch(random, key, inScale);
      Tone tone = Tone.of(onset, length, pitch);
      tones.add(!inScale && random.nextInt(8) == 0 ? bent(tone, key) : tone);
      if (random.nextInt(10) == 0) {
        tones.add(Tone.of(onset, length, new Pitch(pitch.name(), pitch.octave() + 1)));
      }
      onset = onset.plus(length).plus(Beats.of(random.nextInt(3), 4));
    }
    return new Phrase(key, tones);
  }

  private static ScaleType mode(Random random) {
    return Key.MODES.get(random.nextInt(Key.MODES.size()));
  }

  private static Pitch pitch(Random random, Key key, boolean inScale) {
    List<NoteName> notes = key.heptatonic().notes();
    return inScale
        ? new Pitch(notes.get(random.nextInt(7)), 3 + random.nextInt(3))
        : key.spell(52 + random.nextInt(24));
  }

  private static Tone bent(Tone tone, Key key) {
    return tone.withBend(key.spell(tone.pitch().midi() + 2));
  }

  private static List<Beats> onsets(Phrase phrase) {
    return phrase.tones().stream().map(Tone::onset).toList();
  }

  private static List<Beats> lengths(Phrase phrase) {
    return phrase.tones().stream().map(Tone::length).toList();
  }

  private static List<Integer> sounds(Phrase phrase) {
    return phrase.tones().stream().map(t -> t.reached().midi()).toList();
  }

  @Test
  void up_an_octave_and_down_again_is_the_phrase_itself() {
    forAll(
        (phrase, random) -> {
          int octaves = 1 + random.nextInt(2);
          Phrase up = phrase.octaves(octaves);
          assertThat(sounds(up))
              .isEqualTo(sounds(phrase).stream().map(m -> m + 12 * octaves).toList());
          assertThat(up.octaves(-octaves)).isEqualTo(phrase);
        });
  }

  @Test
  void moved_exactly_and_back_is_the_phrase_itself_and_every_distance_stays() {
    forAll(
        (phrase, random) -> {
          Interval by =
              Stream.of("b2", "2", "b3", "3", "4", "5", "b7")
                  .map(i -> Interval.parse(i).orElseThrow())
                  .toList()
                  .get(random.nextInt(7));
          Phrase moved = phrase.plus(by);
          int first = sounds(moved).get(0) - sounds(phrase).get(0);
          assertThat(sounds(moved)).isEqualTo(sounds(phrase).stream().map(m -> m + first).toList());
          assertThat(moved.plus(by.negated())).isEqualTo(phrase);
        });
  }

  @Test
  void displaced_and_displaced_back_is_the_phrase_itself() {
    forAll(
        (phrase, random) -> {
          Beats by = Beats.of(random.nextInt(33) - 16, 4);
          Phrase later = phrase.shifted(by);
          assertThat(later.start()).isEqualTo(phrase.start().plus(by));
          assertThat(later.length()).isEqualTo(phrase.length());
          assertThat(sounds(later)).isEqualTo(sounds(phrase));
          assertThat(later.shifted(by.negated())).isEqualTo(phrase);
        });
  }

  @Test
  void upside_down_twice_is_the_phrase_itself_and_its_landing_stays() {
    forAll(
        true,
        (phrase, random) -> {
          Beats lands = phrase.landing().onset();
          if (onsets(phrase).stream().filter(lands::equals).count() > 1) {
            return; // of two notes struck on the landing another is the main one upside down
          }
          Scale scale = phrase.key().heptatonic();
          Phrase mirrored = phrase.mirrored(scale);
          assertThat(mirrored.mirrored(scale).tones()).containsExactlyElementsOf(phrase.tones());
          List<Integer> was = sounds(phrase);
          List<Integer> is = sounds(mirrored);
          assertThat(is).hasSameSizeAs(was);
          if (onsets(phrase).stream().distinct().count() == was.size()) {
            assertThat(mirrored.landing().pitch()).isEqualTo(phrase.landing().pitch());
            for (int i = 1; i < was.size(); i++) {
              assertThat(Integer.signum(is.get(i) - is.get(i - 1)))
                  .isEqualTo(-Integer.signum(was.get(i) - was.get(i - 1)));
            }
          }
        });
  }

  @Test
  void upside_down_any_phrase_keeps_its_rhythm_and_comes_into_the_scale() {
    forAll(
        (phrase, random) -> {
          Scale scale = phrase.key().heptatonic();
          Phrase mirrored = phrase.mirrored(scale);
          assertThat(onsets(mirrored)).isEqualTo(onsets(phrase));
          assertThat(mirrored.tones()).allMatch(t -> scale.contains(t.pitch().name()));
        });
  }

  @Test
  void moved_along_the_scale_and_back_is_the_phrase_itself() {
    forAll(
        true,
        (phrase, random) -> {
          Scale scale = phrase.key().heptatonic();
          int steps = 1 + random.nextInt(9);
          Phrase moved = phrase.steps(scale, steps);
          assertThat(moved.tones()).allMatch(t -> scale.contains(t.pitch().name()));
          assertThat(lengths(moved)).isEqualTo(lengths(phrase));
          assertThat(moved.steps(scale, -steps)).isEqualTo(phrase);
          assertThat(phrase.steps(scale, 7)).isEqualTo(phrase.octaves(1));
        });
  }

  @Test
  void another_ending_keeps_the_notes_of_the_opening() {
    forAll(
        (phrase, random) -> {
          List<Beats> onsets = onsets(phrase);
          Beats cut = onsets.get(random.nextInt(onsets.size())).plus(Beats.of(1, 4));
          Tone ending = Tone.of(cut, Beats.ONE, pitch(random, phrase.key(), true));
          Phrase other = phrase.before(cut).then(List.of(ending));
          List<Tone> opening =
              phrase.tones().stream().filter(t -> t.onset().isBefore(cut)).toList();
          assertThat(other.tones()).hasSize(opening.size() + 1).contains(ending);
          for (int i = 0; i < opening.size(); i++) {
            assertThat(other.tones().get(i).onset()).isEqualTo(opening.get(i).onset());
            assertThat(other.tones().get(i).pitch()).isEqualTo(opening.get(i).pitch());
            assertThat(other.tones().get(i).bend()).isEqualTo(opening.get(i).bend());
            assertThat(other.tones().get(i).end()).isEqualTo(opening.get(i).end().min(cut));
          }
        });
  }

  @Test
  void thinned_it_is_a_part_of_the_phrase_that_keeps_its_landing_and_its_length() {
    forAll(
        (phrase, random) -> {
          Phrase thin = phrase.thinned(random.nextBoolean() ? Beats.ONE : Beats.of(3, 2));
          assertThat(thin.landing().onset()).isEqualTo(phrase.landing().onset());
          assertThat(thin.landing().pitch()).isEqualTo(phrase.landing().pitch());
          assertThat(thin.start()).isEqualTo(phrase.start());
          assertThat(thin.end()).isEqualTo(phrase.end());
          List<Tone> struck = phrase.tones().stream().map(PhraseLawsTest::struck).toList();
          assertThat(struck)
              .containsAll(thin.tones().stream().map(PhraseLawsTest::struck).toList());
          assertThat(sounding(phrase)).as("no rest is filled").containsAll(sounding(thin));
        });
  }

  /** When it is struck and on what, whatever its length. */
  private static Tone struck(Tone tone) {
    return tone.withLength(Beats.ONE);
  }

  /** The sixteenths in which something sounds. */
  private static List<Integer> sounding(Phrase phrase) {
    return IntStream.range(-40, 200)
        .filter(
            i ->
                phrase.tones().stream()
                    .anyMatch(
                        t -> !t.onset().isAfter(Beats.of(i, 4)) && t.end().isAfter(Beats.of(i, 4))))
        .boxed()
        .toList();
  }

  @Test
  void thickened_it_contains_the_phrase_and_is_as_long() {
    forAll(
        (phrase, random) -> {
          Phrase thick = phrase.thickened(phrase.key().heptatonic());
          List<Tone> struck = thick.tones().stream().map(PhraseLawsTest::struck).toList();
          assertThat(struck)
              .containsAll(phrase.tones().stream().map(PhraseLawsTest::struck).toList());
          assertThat(thick.start()).isEqualTo(phrase.start());
          assertThat(thick.end()).isEqualTo(phrase.end());
          assertThat(thick.landing().pitch()).isEqualTo(phrase.landing().pitch());
          assertThat(sounding(thick)).isEqualTo(sounding(phrase));
        });
  }

  @Test
  void a_repeated_figure_comes_round_after_its_period() {
    forAll(
        (phrase, random) -> {
          Beats period = Beats.of(1 + random.nextInt(24), 4);
          int times = 2 + random.nextInt(4);
          Phrase figure = phrase.repeated(period, times);
          Phrase round = phrase.before(phrase.start().plus(period));
          int size = round.tones().size();
          assertThat(figure.tones()).hasSize(size * times);
          for (int i = 0; i < times; i++) {
            assertThat(figure.tones().subList(i * size, (i + 1) * size))
                .isEqualTo(round.shifted(period.times(i)).tones());
          }
        });
  }

  @Test
  void in_another_key_and_back_every_note_is_the_degree_it_was() {
    forAll(
        true,
        (phrase, random) -> {
          Key to = new Key(NoteName.ofFifths(random.nextInt(12) - 5), mode(random));
          Phrase moved = phrase.inKey(to);
          assertThat(moved.tones()).allMatch(t -> to.heptatonic().contains(t.pitch().name()));
          assertThat(onsets(moved)).isEqualTo(onsets(phrase));
          Phrase back = moved.inKey(phrase.key());
          int octaves = (sounds(phrase).get(0) - sounds(back).get(0)) / 12;
          assertThat(back.octaves(octaves)).isEqualTo(phrase);
        });
  }
}
