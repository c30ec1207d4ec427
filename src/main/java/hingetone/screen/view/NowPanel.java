package hingetone.screen.view;

import hingetone.screen.State;
import hingetone.screen.picture.BigLetters;
import hingetone.screen.picture.Canvas;
import hingetone.screen.picture.Style;
import hingetone.screen.view.Outlook.Coming;
import hingetone.text.DisplayWidth;
import java.util.List;

/** The chord now, the beat, the chord that comes and how long until. */
final class NowPanel {
  private static final int WIDEST_BEAT = 9;

  private NowPanel() {}

  static void draw(Canvas canvas, State state, Outlook moment, int scale) {
    if (canvas.rows() == 0) {
      return;
    }
    List<Coming> coming = moment.coming(4);
    String now = state.countsIn() ? Integer.toString(moment.beat()) : moment.chord();
    if (scale == 0) {
      line(canvas, now, moment, coming);
    } else {
      large(canvas, state, now, moment, coming, scale);
    }
  }

  /** One row: {@code Cm7 2/4 F7 in 3 beats}; the narrower, the shorter. */
  private static void line(Canvas canvas, String now, Outlook moment, List<Coming> coming) {
    String beat = "beat " + moment.beat();
    String next = coming.isEmpty() ? "" : coming.get(0).chord();
    String in = coming.isEmpty() ? "" : moment.in(coming.get(0).until());
    String count =
        coming.isEmpty() ? "" : Long.toString(moment.meter().toBeats(coming.get(0).until()).ceil());
    List<String> tails =
        List.of("  " + beat + "   " + next + " " + in, " " + next + " " + count, " " + count, "");
    int room = canvas.columns() - DisplayWidth.of(now);
    String tail = tails.stream().filter(t -> DisplayWidth.of(t) <= room).findFirst().orElse("");
    int column = canvas.put(0, 0, now, Style.STRONG);
    canvas.put(0, column, tail, Style.PLAIN);
  }

  private static void large(
      Canvas canvas, State state, String now, Outlook moment, List<Coming> coming, int scale) {
    int half = canvas.columns() / 2;
    int letters = canvas.rows() - 1;
    int nowScale = Math.min(scale, BigLetters.scaleFor(now, letters, half - 2, canvas.isAscii()));
    word(canvas.window(0, 0, letters, half), now, nowScale, Style.STRONG);
    beats(canvas.window(letters, 0, 1, half - 2), state, moment);
    if (!coming.isEmpty()) {
      next(canvas.window(0, half, canvas.rows(), half), moment, coming, scale);
    }
  }

  private static void next(Canvas canvas, Outlook moment, List<Coming> coming, int scale) {
    int letters = canvas.rows() - 1;
    String chord = coming.get(0).chord();
    int room = canvas.columns();
    int nextScale = Math.min(scale, BigLetters.scaleFor(chord, letters, room, canvas.isAscii()));
    word(canvas.window(0, 0, letters, room), chord, nextScale, Style.QUIET);
    int column = canvas.put(letters, 0, moment.in(coming.get(0).until()), Style.STRONG);
    for (Coming later : coming.subList(1, coming.size())) {
      String words = "   " + later.chord() + " " + moment.in(later.until());
      if (column + words.length() <= room) {
        column = canvas.put(letters, column, words, Style.QUIET);
      } else {
        return;
      }
    }
  }

  /** A word in big letters, or plainly where they do not fit. */
  static void word(Canvas canvas, String text, int scale, Style style) {
    if (scale == 0) {
      canvas.put(canvas.rows() - 1, 0, text, style.asBold());
    } else {
      int top = canvas.rows() - BigLetters.height(scale, canvas.isAscii());
      BigLetters.draw(canvas, top, 0, text, scale, style);
    }
  }

  /** A bar of beats: those gone heavy, the one that sounds lit with its number. */
  static void beats(Canvas canvas, State state, Outlook moment) {
    Signs signs = Signs.of(state);
    int beats = moment.meter().beatsPerBar();
    int width = Math.min(WIDEST_BEAT, canvas.columns() / beats);
    if (width < 2) {
      canvas.put(0, 0, moment.beat() + "/" + beats, Style.LIT);
      return;
    }
    for (int beat = 1; beat <= beats; beat++) {
      int from = (beat - 1) * width;
      int to = from + width - 1;
      boolean strong = moment.meter().strongBeats().contains(beat);
      for (int row = 0; row < canvas.rows(); row++) {
        if (beat == moment.beat()) {
          canvas.fill(row, from, to, " ", Style.LIT);
        } else {
          boolean gone = beat < moment.beat();
          Style style = gone || strong ? Style.PLAIN : Style.QUIET;
          canvas.fill(row, from, to, gone ? signs.passed() : signs.ahead(), style);
        }
      }
      if (beat == moment.beat()) {
        canvas.put(canvas.rows() / 2, from + (width - 2) / 2, Integer.toString(beat), Style.LIT);
      }
    }
  }
}
