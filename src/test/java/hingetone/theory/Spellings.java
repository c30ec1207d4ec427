package hingetone.theory;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Every note name, pitch and interval that the laws are tested on. */
final class Spellings {
  /** Seven letters, each with two flats to two sharps. */
  static final List<NoteName> NAMES =
      Stream.of(Letter.values())
          .flatMap(l -> IntStream.rangeClosed(-2, 2).mapToObj(a -> new NoteName(l, a)))
          .toList();

  /** The names in eleven octaves. */
  static final List<Pitch> PITCHES =
      NAMES.stream()
          .flatMap(name -> IntStream.rangeClosed(-1, 9).mapToObj(o -> new Pitch(name, o)))
          .toList();

  /** Unisons to fifteenths, twice diminished to twice augmented, up and down. */
  static final List<Interval> INTERVALS =
      IntStream.rangeClosed(1, 15)
          .boxed()
          .flatMap(n -> IntStream.rangeClosed(-2, 2).mapToObj(a -> Interval.ofNumber(n, a)))
          .flatMap(i -> Stream.of(i, i.negated()))
          .distinct()
          .toList();

  private Spellings() {}

  static NoteName name(String text) {
    return NoteName.parse(text).orElseThrow();
  }

  static List<NoteName> names(String text) {
    return Stream.of(text.split(" ")).map(Spellings::name).toList();
  }
}
