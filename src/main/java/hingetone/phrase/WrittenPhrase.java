package hingetone.phrase;

import hingetone.notation.NoteText;
import hingetone.score.Note;
import hingetone.text.reading.Problems;
import hingetone.text.reading.Span;
import hingetone.text.reading.Word;
import hingetone.text.reading.Yaml;
import hingetone.theory.Key;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** Notes written around bar lines, the first of which they land on. */
final class WrittenPhrase {
  private static final Pattern BAR_LINE = Pattern.compile("\\|");
  private static final Beats PUSH = Beats.of(1, 2);
  private static final int FEWEST_NOTES = 2;
  private static final int MOST_BARS = 4;

  private final Problems problems;
  private final Yaml.Text text;
  private final NoteText notes;
  private final Meter meter;
  private final List<Word> lines;

  /**
   * @param problems where what is wrong is noted
   * @param text where the notes stand
   * @param notes the notes as they were read
   * @param meter their meter
   */
  WrittenPhrase(Problems problems, Yaml.Text text, NoteText notes, Meter meter) {
    this.problems = problems;
    this.text = text;
    this.notes = notes;
    this.meter = meter;
    this.lines = text.words(problems.source(), BAR_LINE);
  }

  /** Whether it lands on its first bar line and its bars are whole; what is wrong is noted. */
  boolean isSound() {
    if (notes.barLines().isEmpty()) {
      problems.add(
          text.span(),
          "no | says where it lands",
          "Put a | before the note that falls on the bar line: E4i G4i A4i | C5q. A4i G4h.");
      return false;
    }
    boolean lands = lands();
    boolean whole = barsAreWhole();
    return lands && whole && isLongEnough();
  }

  private boolean lands() {
    Beats landing = landing();
    Span first = lines.get(0).span();
    if (landing.isAfter(meter.barLength())) {
      problems.add(
          first,
          "a pickup of " + landing + " quarter notes is longer than a bar",
          "What stands before the first | is the pickup; it has at most " + bar() + ".");
      return false;
    }
    boolean struck =
        notes.notes().stream()
            .anyMatch(
                note ->
                    !note.onset().isBefore(landing.minus(PUSH))
                        && !note.onset().isAfter(landing)
                        && note.onset().plus(note.length()).isAfter(landing));
    if (!struck) {
      problems.add(
          first,
          "nothing is struck where it lands",
          "A note starts at the first |, or an eighth before it and is tied over it.");
    }
    return struck;
  }

  /** Between two bar lines there is a bar; after the last one as much of it as there is. */
  private boolean barsAreWhole() {
    boolean whole = true;
    for (int i = 1; i < lines.size(); i++) {
      Beats length = notes.barLines().get(i).minus(notes.barLines().get(i - 1));
      if (!length.equals(meter.barLength())) {
        problems.add(
            new Span(lines.get(i - 1).span().start(), lines.get(i).span().end()),
            "this bar has " + length + " quarter notes",
            "A bar of " + meter + " has " + bar() + ".");
        whole = false;
      }
    }
    int last = lines.size() - 1;
    Beats rest = notes.length().minus(notes.barLines().get(last));
    if (whole && rest.isAfter(meter.barLength())) {
      problems.add(
          new Span(lines.get(last).span().start(), text.inner().end()),
          "the last bar has " + rest + " quarter notes",
          "A bar of " + meter + " has " + bar() + "; put a | where the next one starts.");
      whole = false;
    }
    return whole;
  }

  private boolean isLongEnough() {
    Beats after = notes.length().minus(landing());
    boolean fits = !after.isAfter(meter.barLength().times(MOST_BARS));
    if (!fits) {
      problems.add(
          text.span(), "more than " + MOST_BARS + " bars", "A statement is what one breath holds.");
    }
    boolean enough = notes.notes().size() >= FEWEST_NOTES;
    if (!enough) {
      problems.add(text.span(), "one note is no statement", "It has at least two notes.");
    }
    return fits && enough;
  }

  private String bar() {
    return meter.barLength() + " quarter notes";
  }

  private Beats landing() {
    return notes.barLines().get(0);
  }

  /** The phrase in its key, time counted from where it lands. */
  Phrase phrase(Key key) {
    List<Tone> tones = new ArrayList<>();
    for (Note note : notes.notes()) {
      tones.add(Tone.of(note.onset().minus(landing()), note.length(), key.spell(note.key())));
    }
    return new Phrase(key, tones);
  }
}
