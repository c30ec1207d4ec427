package hingetone.text.reading;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.CollectionEndEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.MappingStartEvent;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.events.SequenceStartEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;

/** Builds the tree of {@link Yaml} from the parser's events, so that depth and places are ours. */
final class YamlReader {
  private static final int LONGEST_LINE = 10_000;
  private static final int DEEPEST = 32;
  private static final LoadSettings SETTINGS =
      LoadSettings.builder().setUseMarks(true).setCodePointLimit(Integer.MAX_VALUE).build();

  /** A block's {@code |} with text behind it, which YAML does not take. */
  private static final Pattern ONE_LINE_BLOCK =
      Pattern.compile("(?m)^[ ]*(?:- +)?([A-Za-z-]+):[ ]+(\\|(?![ 0-9+-]*(?: #.*)?$).*)$");

  private final Problems problems;
  private final Source source;
  private int[] offsets = {};
  private Iterator<Event> events;

  /** What was used of YAML that makes it another text than it looks; each is reported once. */
  private final Set<String> tricks = new HashSet<>();

  YamlReader(Problems problems) {
    this.problems = problems;
    this.source = problems.source();
  }

  Optional<Yaml> read() {
    if (hasUnreadableLine()) {
      return Optional.empty();
    }
    String text = withoutOneLineBlocks();
    offsets = text.codePoints().count() == text.length() ? offsets : offsetsOf(text);
    try {
      return document(text);
    } catch (MarkedYamlEngineException e) {
      String said = e.getProblem() == null ? "" : e.getProblem();
      int place = e.getProblemMark().or(e::getContextMark).map(this::offset).orElse(0);
      int opened = e.getContextMark().map(this::offset).orElse(place);
      new YamlMistake(problems, said, place, opened).report();
    } catch (YamlEngineException e) {
      problems.add(new Span(0, 0), "this is not YAML", "I expected keys with values in YAML 1.2.");
    } catch (TooDeep e) {
      problems.add(
          e.span,
          "nested more than " + DEEPEST + " deep",
          "Nothing here needs lists within lists like this. Is this the right file?");
    }
    return Optional.empty();
  }

  private boolean hasUnreadableLine() {
    String text = source.text();
    for (int i = 0; i < text.length(); i++) {
      if (!isText(text, i)) {
        problems.add(
            new Span(i, i + 1),
            String.format("a character that is not text (U+%04X)", (int) text.charAt(i)),
            "I expected a plain text in UTF-8. Is this the right file?");
        return true;
      }
    }
    for (int line = 1; line <= source.lineCount(); line++) {
      Span span = source.spanOfLine(line);
      if (span.length() > LONGEST_LINE) {
        problems.add(
            span.part(LONGEST_LINE, LONGEST_LINE),
            "a line of " + span.length() + " characters",
            "I read lines of at most " + LONGEST_LINE + " characters.");
        return true;
      }
    }
    return false;
  }

  private static boolean isText(String text, int at) {
    char c = text.charAt(at);
    if (c == '\r') {
      return at + 1 < text.length() && text.charAt(at + 1) == '\n';
    }
    boolean lone =
        Character.isSurrogate(c) && Character.getType(text.codePointAt(at)) == Character.SURROGATE;
    boolean afterHigh = lone && at > 0 && Character.isSurrogatePair(text.charAt(at - 1), c);
    return c == '\n'
        || c == '\t'
        || !(Character.isISOControl(c) || c >= 0xFFFE || lone && !afterHigh);
  }

  /** The text with every one-line block blanked out, each noted as a problem of its own. */
  private String withoutOneLineBlocks() {
    StringBuilder text = new StringBuilder(source.text());
    Matcher found = ONE_LINE_BLOCK.matcher(source.text());
    while (found.find()) {
      Span span = new Span(found.start(2), found.end(2));
      String key = found.group(1);
      problems.add(
          span,
          "text on the same line as \"" + key + ": |\"",
          "The | after the colon says that a block follows, so the block starts on the next line:\n"
              + "  "
              + key
              + ": |\n    "
              + source.text(span).strip());
      text.replace(span.start(), span.end(), " ".repeat(span.length()));
    }
    return text.toString();
  }

  private static int[] offsetsOf(String text) {
    int[] offsets = new int[text.codePointCount(0, text.length()) + 1];
    for (int i = 0, at = 0; i < offsets.length; i++) {
      offsets[i] = at;
      at += at < text.length() ? Character.charCount(text.codePointAt(at)) : 0;
    }
    return offsets;
  }

  private Optional<Yaml> document(String text) {
    events = new Parse(SETTINGS).parseString(text).iterator();
    Optional<Yaml> document = Optional.empty();
    while (events.hasNext()) {
      Event event = events.next();
      if (event.getEventId() == Event.ID.DocumentStart) {
        if (document.isPresent()) {
          problems.add(
              span(event), "a second document", "I expected one document: leave out the --- line.");
          return document;
        }
        document = Optional.of(node(events.next(), 1));
      }
    }
    if (document.isEmpty()) {
      problems.add(
          new Span(0, 0),
          "nothing in it",
          "I expected keys with values, a line each, such as \"tempo: 112\".");
    }
    return tricks.isEmpty() ? document : Optional.empty();
  }

  private Yaml node(Event event, int depth) {
    if (depth > DEEPEST) {
      throw new TooDeep(span(event));
    }
    refuseTricks(event);
    if (event instanceof MappingStartEvent) {
      return mapping(event, depth);
    }
    if (event instanceof SequenceStartEvent) {
      List<Yaml> items = new ArrayList<>();
      Event next = events.next();
      while (!(next instanceof CollectionEndEvent)) {
        items.add(node(next, depth + 1));
        next = events.next();
      }
      return new Yaml.Sequence(new Span(span(event).start(), span(next).end()), items);
    }
    return event instanceof ScalarEvent scalar ? text(scalar) : nothing(span(event));
  }

  private Yaml mapping(Event event, int depth) {
    List<Yaml.Entry> entries = new ArrayList<>();
    Set<String> keys = new HashSet<>();
    Event next = events.next();
    while (!(next instanceof CollectionEndEvent)) {
      Yaml key = node(next, depth + 1);
      Yaml value = node(events.next(), depth + 1);
      if (!(key instanceof Yaml.Text name)) {
        problems.add(key.span(), "a key that is " + key.kind(), "A key is a single word.");
      } else if (!keys.add(name.value())) {
        problems.add(
            name.span(),
            "\"" + name.value() + "\" is given twice",
            "Each key stands once; leave out one of the two.");
      } else {
        entries.add(new Yaml.Entry(name, value));
      }
      next = events.next();
    }
    return new Yaml.Mapping(new Span(span(event).start(), span(next).end()), entries);
  }

  private void refuseTricks(Event event) {
    String trick = null;
    if (event instanceof AliasEvent) {
      trick = "an alias (*)";
    } else if (event instanceof NodeEvent node && node.getAnchor().isPresent()) {
      trick = "an anchor (&)";
    } else if (tag(event).isPresent()) {
      trick = "a tag (!)";
    }
    if (trick != null && tricks.add(trick)) {
      problems.add(
          span(event),
          trick + " is not used here",
          "Write the value out. A text that starts with & * or ! goes in quotes.");
    }
  }

  private static Optional<String> tag(Event event) {
    if (event instanceof ScalarEvent scalar) {
      return scalar.getTag();
    }
    if (event instanceof MappingStartEvent mapping) {
      return mapping.getTag();
    }
    return event instanceof SequenceStartEvent sequence ? sequence.getTag() : Optional.empty();
  }

  private Yaml.Text text(ScalarEvent scalar) {
    Span span = span(scalar);
    Span inner = span;
    if (scalar.isLiteral() || scalar.isFolded()) {
      int below = source.text().indexOf('\n', span.start()) + 1;
      inner = new Span(Math.min(below, span.end()), span.end());
    } else if (!scalar.isPlain() && span.length() >= 2) {
      inner = span.part(1, span.length() - 1);
    }
    return new Yaml.Text(span, scalar.getValue(), inner);
  }

  private static Yaml.Text nothing(Span span) {
    return new Yaml.Text(span, "", span);
  }

  private Span span(Event event) {
    int start = event.getStartMark().map(this::offset).orElse(0);
    return new Span(start, Math.max(start, event.getEndMark().map(this::offset).orElse(start)));
  }

  private int offset(Mark mark) {
    int offset = offsets.length == 0 ? mark.getIndex() : offsets[mark.getIndex()];
    return Math.min(offset, source.text().length());
  }

  private static final class TooDeep extends RuntimeException {
    private static final long serialVersionUID = 1;
    private final transient Span span;

    TooDeep(Span span) {
      this.span = span;
    }
  }
}
