package hingetone.take;

import hingetone.text.Quote;
import java.io.IOException;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * One of the lines of notes that a file holds: a track, a channel of one, a part.
 *
 * @param number the number of its track or part in the file, from 1
 * @param channel its channel, from 1, where the track has several
 * @param name what the file calls it; empty where it does not
 * @param notes its notes, in order of their strokes
 */
record TakeLine(int number, Optional<Integer> channel, String name, List<PlacedNote> notes) {
  /** What our own takes call it. */
  private static final String OURS = "lead";

  /** A line whose strings are known is taken rather than the same without them. */
  private static final double STRINGS = 0.01;

  private static final int MOST_NOTES = 100_000;

  /** More notes within so much of a quarter note no hand strikes; our own bounds. */
  private static final int MOST_AT_ONCE = 16;

  private static final double AT_ONCE = 1 / 16.0;

  /** A line, and what is to be told of it where there was a choice. */
  record Chosen(List<PlacedNote> notes, Optional<String> told) {}

  /**
   * Chooses.
   *
   * @param lines those that have notes
   * @throws IOException with a sentence for people where the one wanted is not there
   */
  static Chosen of(String file, List<TakeLine> lines, LineWanted wanted) throws IOException {
    List<TakeLine> fitting =
        lines.stream()
            .filter(line -> wanted.track().map(t -> t == line.number).orElse(true))
            .filter(
                line -> wanted.channel().map(c -> line.channel.equals(Optional.of(c))).orElse(true))
            .toList();
    if (fitting.isEmpty() && !wanted.equals(LineWanted.ANY)) {
      throw new IOException(file + " has no such line of notes. " + all(lines));
    }
    Optional<TakeLine> named =
        fitting.stream().filter(line -> line.name.equalsIgnoreCase(OURS)).findFirst();
    Optional<TakeLine> found =
        named.or(() -> fitting.stream().max(Comparator.comparingDouble(TakeLine::likeness)));
    if (found.isPresent()) {
      check(file, found.get().notes);
    }
    boolean guessed =
        named.isEmpty() && fitting.stream().map(TakeLine::tune).distinct().count() > 1;
    return new Chosen(
        found.map(TakeLine::notes).orElse(List.of()),
        found
            .filter(line -> guessed)
            .map(line -> "Taken as the solo: " + line.words() + ". " + all(lines)));
  }

  /** Refuses what nobody plays, which would keep a review busy for long. */
  private static void check(String file, List<PlacedNote> notes) throws IOException {
    if (notes.size() > MOST_NOTES) {
      throw new IOException(file + " is longer than any take: more than " + MOST_NOTES + " notes.");
    }
    for (int i = MOST_AT_ONCE; i < notes.size(); i++) {
      if (notes.get(i).at() - notes.get(i - MOST_AT_ONCE).at() < AT_ONCE) {
        throw new IOException(
            file + " holds no solo: more than " + MOST_AT_ONCE + " notes are struck at once.");
      }
    }
  }

  private double likeness() {
    boolean known = notes.stream().anyMatch(n -> n.handling().string().isPresent());
    return MelodyLikeness.of(notes) + (known ? STRINGS : 0);
  }

  /** What is heard of it: the same in notation and in tab. */
  private List<List<Double>> tune() {
    return notes.stream().map(n -> List.of(n.at(), n.end(), n.reached())).toList();
  }

  private static String all(List<TakeLine> lines) {
    return "--track or --channel says which: "
        + lines.stream().map(TakeLine::words).collect(Collectors.joining("; "))
        + ".";
  }

  private String words() {
    String called = name.isBlank() ? "" : " \"" + Quote.of(name) + "\"";
    return "track "
        + number
        + called
        + channel.map(c -> ", channel " + c).orElse("")
        + " ("
        + notes.size()
        + " notes)";
  }
}
