package hingetone.theory;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Reads what stands after a chord's root: the longest known quality at the start, then alterations,
 * also in parentheses and separated by commas there. The time is linear: no quality is longer than
 * {@link #LONGEST} characters, and no alteration is taken twice.
 */
final class ChordSuffix {
  /** A quality, or else how many characters made sense before reading got stuck. */
  record Result(Optional<ChordQuality> quality, int stuckAt) {}

  /** A quality without alterations and those added to it, in their order. */
  private record Parts(ChordQuality stem, List<Alteration> alterations) {
    Parts plus(List<Alteration> more) {
      return new Parts(
          stem,
          Stream.concat(alterations.stream(), more.stream())
              .sorted(Comparator.comparingInt(Alteration.ALL::indexOf))
              .toList());
    }
  }

  private static final Map<String, ChordQuality> QUALITIES = new HashMap<>();
  private static final Map<String, Alteration> ALTERATIONS = new HashMap<>();
  private static final Map<Parts, ChordQuality> COMPOSED = new HashMap<>();
  private static final Set<String> TENSIONS = Set.of("9", "11", "13");
  private static final int LONGEST;

  static {
    for (ChordQuality quality : ChordQuality.ALL) {
      names(quality)
          .flatMap(n -> ChordSpelling.spellings(n).stream())
          .forEach(spelling -> QUALITIES.put(spelling, quality));
    }
    for (Alteration alteration : Alteration.ALL) {
      Stream.concat(Stream.of(alteration.name()), alteration.aliases().stream())
          .flatMap(n -> ChordSpelling.spellings(n).stream())
          .forEach(spelling -> ALTERATIONS.put(spelling, alteration));
    }
    LONGEST = QUALITIES.keySet().stream().mapToInt(String::length).max().orElseThrow();
    for (ChordQuality quality : ChordQuality.ALL) {
      names(quality)
          .flatMap(name -> new ChordSuffix(name).parts(name.length() - 1).stream())
          .forEach(parts -> COMPOSED.put(parts, quality));
    }
  }

  private final String text;
  private int at;
  private int stuckAt;

  private ChordSuffix(String text) {
    this.text = text;
  }

  /** Reads a whole suffix. */
  static Result read(String suffix) {
    ChordSuffix reader = new ChordSuffix(ChordSpelling.plain(suffix));
    ChordQuality known = QUALITIES.get(reader.text);
    Optional<ChordQuality> quality =
        known != null
            ? Optional.of(known)
            : reader.parts(reader.text.length()).flatMap(ChordSuffix::compose);
    return new Result(quality, reader.stuckAt);
  }

  private static Stream<String> names(ChordQuality quality) {
    return Stream.concat(Stream.of(quality.suffix()), quality.aliases().stream());
  }

  /** The first reading as a quality of at most this many characters and alterations. */
  private Optional<Parts> parts(int longest) {
    for (int length = Math.min(LONGEST, longest); length >= 0; length--) {
      ChordQuality quality = QUALITIES.get(text.substring(0, length));
      if (quality != null) {
        at = length;
        Optional<List<Alteration>> alterations = alterations();
        stuckAt = Math.max(stuckAt, at);
        if (alterations.isPresent()) {
          return alterations.map(partsOf(quality)::plus);
        }
      }
    }
    return Optional.empty();
  }

  /** A quality taken apart by its suffix, so that alterations of either sort come together. */
  private static Parts partsOf(ChordQuality quality) {
    return new ChordSuffix(quality.suffix())
        .parts(quality.suffix().length() - 1)
        .orElse(new Parts(quality, List.of()));
  }

  /** The alterations up to the end of the text; empty when something else stands there. */
  private Optional<List<Alteration>> alterations() {
    List<Alteration> found = new ArrayList<>();
    boolean inside = false;
    boolean mayClose = false;
    while (at < text.length()) {
      char next = text.charAt(at);
      if (next == '(' && !inside) {
        inside = true;
        mayClose = false;
        at++;
      } else if (inside && mayClose && (next == ')' || next == ',')) {
        inside = next == ',';
        mayClose = false;
        at++;
      } else {
        Optional<Alteration> alteration = alterationHere(inside && !mayClose);
        if (alteration.isEmpty() || found.contains(alteration.get())) {
          return Optional.empty();
        }
        found.add(alteration.get());
        mayClose = true;
      }
    }
    return inside ? Optional.empty() : Optional.of(found);
  }

  /**
   * The longest alteration here, stepped over; a bare 9, 11 or 13 is one when it may stand alone.
   */
  private Optional<Alteration> alterationHere(boolean bareNumbers) {
    for (int length = Math.min(LONGEST, text.length() - at); length > 0; length--) {
      String word = text.substring(at, at + length);
      Alteration alteration = ALTERATIONS.get(word);
      if (alteration == null && bareNumbers && TENSIONS.contains(word)) {
        alteration = ALTERATIONS.get("add" + word);
      }
      if (alteration != null) {
        at += length;
        return Optional.of(alteration);
      }
    }
    return Optional.empty();
  }

  /** The quality with these parts: its line in the table, or else one made by the alterations. */
  private static Optional<ChordQuality> compose(Parts parts) {
    ChordQuality known = COMPOSED.get(parts);
    if (known != null || parts.alterations().isEmpty()) {
      return Optional.of(known != null ? known : parts.stem());
    }
    List<Interval> notes = parts.stem().intervals();
    boolean fit = parts.alterations().stream().allMatch(a -> a.fits(notes));
    List<Alteration> all = parts.alterations();
    if (!fit || all.stream().distinct().count() < all.size()) {
      return Optional.empty();
    }
    List<Interval> changed =
        Stream.concat(
                notes.stream().filter(n -> all.stream().noneMatch(a -> a.replaces() == n.number())),
                all.stream().flatMap(a -> a.adds().stream()))
            .distinct()
            .sorted(Comparator.comparingInt(Interval::semitones))
            .toList();
    return Optional.of(new ChordQuality(suffix(parts), List.of(), changed));
  }

  private static String suffix(Parts parts) {
    boolean apart =
        parts.stem().suffix().isEmpty() && parts.alterations().get(0).startsWithAccidental();
    Stream<String> names = parts.alterations().stream().map(Alteration::name);
    return parts.stem().suffix()
        + (apart
            ? names.collect(Collectors.joining(",", "(", ")"))
            : names.collect(Collectors.joining()));
  }
}
