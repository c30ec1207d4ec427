package hingetone.screen.view;

import hingetone.screen.State;
import hingetone.screen.picture.Canvas;
import hingetone.screen.picture.Ink;
import hingetone.screen.picture.Style;
import hingetone.text.Choice;
import hingetone.text.DisplayWidth;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** What is wrong, else what was just told, else the keys one needs first. */
final class StatusPanel {
  private static final String CUT = " ...";

  private StatusPanel() {}

  /** The keys, in a row of their own; first how what is hidden comes back. */
  static void keys(Canvas canvas, State state) {
    String hidden =
        state.settings().hidden().stream()
            .sorted()
            .map(Choice::word)
            .collect(Collectors.joining(", "));
    String back = hidden.isEmpty() ? "" : "u shows " + hidden + "   ";
    canvas.put(0, 1, back + "space pause   ? keys   tab menu   q leave", Style.QUIET);
  }

  /**
   * Words for the player over the last rows of the whole picture: as many rows as they take, but
   * never more than half of them.
   */
  static void words(Canvas canvas, State state) {
    if (state.words().fault().isPresent()) {
      String words = Signs.of(state).warning() + " " + state.words().fault().get();
      words(canvas, words, Style.of(Ink.WARNING).asBold());
    } else if (!state.words().notice().isEmpty()) {
      words(canvas, state.words().notice(), Style.PLAIN);
    }
  }

  private static void words(Canvas canvas, String words, Style style) {
    List<String> lines = lines(words, canvas.columns() - 2, canvas.rows() / 2);
    int first = canvas.rows() - lines.size();
    for (int i = 0; i < lines.size(); i++) {
      canvas.fill(first + i, 0, canvas.columns(), " ", Style.PLAIN);
      canvas.put(first + i, 1, lines.get(i), style);
    }
  }

  /** Words in lines of a width; where there are more than are allowed, the last says so. */
  private static List<String> lines(String words, int width, int most) {
    List<String> all = wrapped(words, width);
    if (all.size() <= most || most == 0) {
      return all.subList(0, Math.min(most, all.size()));
    }
    List<String> shown = wrapped(words, width - CUT.length()).subList(0, most);
    shown.set(most - 1, shown.get(most - 1) + CUT);
    return shown;
  }

  private static List<String> wrapped(String words, int width) {
    List<String> lines = new ArrayList<>();
    for (String word : words.split(" ")) {
      String last = lines.isEmpty() ? "" : lines.get(lines.size() - 1) + " " + word;
      if (last.isEmpty() || DisplayWidth.of(last) > width) {
        lines.add(word);
      } else {
        lines.set(lines.size() - 1, last);
      }
    }
    return lines;
  }
}
