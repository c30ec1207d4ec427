package hingetone.notation;

import hingetone.text.reading.Diagnostic;
import hingetone.text.reading.Reading;
import hingetone.text.reading.Source;
import hingetone.text.reading.Span;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Reads note text: splits it into words with their places, checks each, lets JFugue parse them. */
final class NoteReader {
  private static final Pattern WORD = Pattern.compile("[^\\s|]+|\\|");
  private static final int MOST_WORDS = 4096;

  private final Source source;
  private final List<Diagnostic> problems = new ArrayList<>();
  private final List<List<Token>> groups = new ArrayList<>();

  /** For each bar line how many groups stand before it. */
  private final List<Integer> groupsBeforeLine = new ArrayList<>();

  NoteReader(Source source) {
    this.source = source;
  }

  Reading<NoteText> read(List<Span> spans) {
    List<Span> words = words(spans);
    List<Span> notes = words.stream().filter(word -> !isBarLine(word)).toList();
    if (notes.size() > MOST_WORDS) {
      report(notes.get(MOST_WORDS), "too many notes", "A line has at most 4096 notes and rests.");
    } else {
      words.forEach(this::readGroup);
      checkTies();
    }
    if (problems.isEmpty() && groups.isEmpty()) {
      Span place = spans.isEmpty() ? new Span(0, 0) : spans.get(0);
      report(place, "there are no notes here", "Write notes such as A2q C3i D3i E3h.");
    }
    return problems.isEmpty() ? Reading.of(parse()) : Reading.failed(problems);
  }

  private List<Span> words(List<Span> spans) {
    List<Span> words = new ArrayList<>();
    for (Span span : spans) {
      Matcher m = WORD.matcher(source.text().substring(span.start(), span.end()));
      while (m.find()) {
        words.add(span.part(m.start(), m.end()));
      }
    }
    return words;
  }

  private boolean isBarLine(Span word) {
    return textAt(word).equals("|");
  }

  private void readGroup(Span span) {
    if (isBarLine(span)) {
      groupsBeforeLine.add(groups.size());
      return;
    }
    String text = textAt(span);
    List<Token> group = new ArrayList<>();
    for (Span part : Token.split(text, span)) {
      try {
        group.add(Token.read(textAt(part), part));
      } catch (Token.NotANote e) {
        Span place = part.length() == 0 ? span : part;
        report(place, e.getMessage(), e.expected());
        return;
      }
    }
    Beats length = group.get(0).length();
    if (group.stream().anyMatch(token -> !token.length().equals(length))) {
      report(
          span,
          "notes joined by + have different lengths",
          "Give each note its length, all the same: C4h+E4h+G4h. A tie makes one longer.");
    }
    if (group.size() > 1 && group.stream().anyMatch(Token::isRest)) {
      report(span, "a rest cannot be joined by +", "Leave the rest out.");
    }
    groups.add(group);
  }

  private void checkTies() {
    Map<Integer, Token> open = new HashMap<>();
    for (List<Token> group : groups) {
      Map<Integer, Token> before = open;
      open = new HashMap<>();
      for (Token token : group) {
        if (token.tieFrom() && before.remove(token.key()) == null) {
          report(token.span(), "nothing is tied to this note", "A tie is C4q- C4-q: one note.");
        }
        if (token.tieOn()) {
          open.put(token.key(), token);
        }
      }
      reportOpen(before);
    }
    reportOpen(open);
  }

  private void reportOpen(Map<Integer, Token> ties) {
    for (Token token : ties.values()) {
      report(
          token.span(),
          "the tie is not taken up",
          "The next note must be the same, with a - before its length: C4q- C4-q.");
    }
  }

  /** What passed the checks is safe; if JFugue disagrees, that is a bug of ours. */
  private NoteText parse() {
    String musicString =
        groups.stream()
            .map(group -> group.stream().map(Token::text).collect(Collectors.joining("+")))
            .collect(Collectors.joining(" "));
    NoteListener heard = NoteListener.parse(musicString);
    Beats length = length(groups.size());
    if (!heard.end().equals(length)) {
      throw new IllegalStateException("JFugue heard " + heard.end() + " not " + length);
    }
    List<Beats> barLines = groupsBeforeLine.stream().map(this::length).toList();
    return new NoteText(heard.notes(), heard.end(), barLines);
  }

  /** How long the first groups are together. */
  private Beats length(int first) {
    return groups.stream()
        .limit(first)
        .map(group -> group.get(0).length())
        .reduce(Beats.ZERO, Beats::plus);
  }

  private String textAt(Span span) {
    return source.text().substring(span.start(), span.end());
  }

  private void report(Span span, String message, String expected) {
    problems.add(Diagnostic.of(source, span, message, expected));
  }
}
