package hingetone.review.marks;

import hingetone.review.MarkedPhrase;
import hingetone.review.Marks;
import hingetone.review.Played;
import hingetone.review.ReviewedPhrase.Role;
import hingetone.text.Choice;
import hingetone.text.Quote;
import hingetone.text.Suggestion;
import hingetone.text.reading.Fields;
import hingetone.text.reading.Problems;
import hingetone.text.reading.Reading;
import hingetone.text.reading.Source;
import hingetone.text.reading.Yaml;
import hingetone.time.Position;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** Reads a teacher's marks on a take. The format is specified in {@code src/docs/marks.md}. */
public final class MarksReader {
  private static final String FROM = "I expected bar and beat, as in from: bar 3 beat 2+1/2.";
  private static final int LONGEST_REMARK = 1000;

  private final Problems problems;
  private final Played played;
  private final List<MarkedPhrase> phrases = new ArrayList<>();

  private MarksReader(Problems problems, Played played) {
    this.problems = problems;
    this.played = played;
  }

  /** Reads marks on what was played: them, or every problem in them. Never throws. */
  public static Reading<Marks> read(Source source, Played played) {
    Problems problems = new Problems(source);
    Marks marks =
        Yaml.read(problems).map(new MarksReader(problems, played)::marks).orElse(Marks.NONE);
    return problems.reading(() -> marks);
  }

  private Marks marks(Yaml yaml) {
    if (!(yaml instanceof Yaml.Mapping mapping)) {
      problems.add(
          yaml.span(), "these are no marks", "I expected phrases: and a list of them below it.");
      return Marks.NONE;
    }
    Fields file = new Fields(problems, mapping, MarksKey.table(MarksKey.Place.FILE));
    Optional<String> remark = remark(file);
    int before = -1;
    for (Fields phrase : file.list(MarksKey.PHRASES, MarksKey.table(MarksKey.Place.PHRASE))) {
      before = phrase(phrase, before);
    }
    return new Marks(remark, phrases);
  }

  /** Reads a phrase; gives the index of its first note, or that of the one before. */
  private int phrase(Fields fields, int before) {
    List<String> roles = Choice.words(Role.values());
    Optional<Role> role =
        fields.read(
            MarksKey.ROLE,
            text -> Choice.named(Role.values(), text).map(Optional::of),
            Optional.empty(),
            text -> Suggestion.nearest(text, roles),
            "I expected one of: " + String.join(", ", roles) + ".");
    Optional<Integer> to = number(fields, MarksKey.TO, "the number of an earlier phrase");
    checkReply(fields, role, to);
    Optional<String> remark = remark(fields);
    Optional<Integer> time = number(fields, MarksKey.TIME, "which time the bar was played");
    if (!fields.has(MarksKey.FROM)) {
      fields.missing(MarksKey.FROM, FROM);
    }
    Optional<Position> from = fields.text(MarksKey.FROM, FROM).flatMap(this::place);
    int first = from.map(at -> first(fields, new MarkPlace(at, time), before)).orElse(before);
    phrases.add(new MarkedPhrase(first, role, to, remark));
    return first;
  }

  private Optional<Position> place(Yaml.Text text) {
    Optional<Position> place = MarkPlace.parse(text.value().strip());
    if (place.isEmpty()) {
      problems.add(text.span(), "\"" + Quote.of(text.value()) + "\" is no place", FROM);
    }
    return place;
  }

  private void checkReply(Fields fields, Optional<Role> role, Optional<Integer> to) {
    if (to.isEmpty()) {
      return;
    }
    if (role.filter(r -> r != Role.REPLY).isPresent()) {
      problems.add(
          fields.place(MarksKey.TO),
          "a " + Choice.word(role.get()) + " answers nothing",
          "\"to\" stands in a reply: role: reply.");
    } else if (to.get() > phrases.size()) {
      problems.add(
          fields.value(MarksKey.TO).orElseThrow().span(),
          "phrase " + to.get() + " does not come before this one",
          phrases.isEmpty()
              ? "The first phrase answers none."
              : "A reply answers an earlier phrase, up to number " + phrases.size() + ".");
    }
  }

  private int first(Fields fields, MarkPlace place, int before) {
    Optional<Integer> found = place.note(played, before);
    if (found.filter(i -> i > before).isPresent()) {
      return found.get();
    }
    Optional<Integer> anywhere = place.note(played, -1);
    boolean early = anywhere.isPresent();
    problems.add(
        fields.value(MarksKey.FROM).orElseThrow().span(),
        early
            ? "this phrase does not begin after the one before"
            : "no note begins within half a beat of " + place.position(),
        early
            ? "The phrases stand in the order in which they were played."
            : "The take goes from " + end(0) + " to " + end(played.notes().size() - 1) + ".");
    return before;
  }

  private String end(int note) {
    return note < 0 || played.notes().isEmpty()
        ? "nothing"
        : played.position(played.notes().get(note).at()).toString();
  }

  private Optional<Integer> number(Fields fields, MarksKey key, String what) {
    Function<String, Optional<Optional<Integer>>> read =
        text ->
            text.matches("[1-9]\\d{0,5}")
                ? Optional.of(Optional.of(Integer.valueOf(text)))
                : Optional.empty();
    return fields.read(key, read, Optional.empty(), "I expected " + what + ", from 1.");
  }

  private Optional<String> remark(Fields fields) {
    return fields.read(
        MarksKey.REMARK,
        text ->
            text.length() <= LONGEST_REMARK
                ? Optional.of(Optional.of(text.replaceAll("\\s+", " ")))
                : Optional.empty(),
        Optional.empty(),
        "I expected a text of at most " + LONGEST_REMARK + " characters.");
  }
}
