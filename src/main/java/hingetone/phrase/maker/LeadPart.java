package hingetone.phrase.maker;

import hingetone.chart.Form;
import hingetone.phrase.Tone;
import hingetone.plan.Plan;
import hingetone.plan.Prompt;
import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Sound;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;

/**
 * The plan's phrases as a part that can be heard.
 *
 * <pre>{@code
 * Part lead = new LeadPart(plan, maker, backing::played).ofLap(1, ExampleChoice.ALL.of(plan, Position.of(1, 1)));
 * }</pre>
 *
 * @param plan the plan
 * @param maker makes its phrases
 * @param played where a place of the lap drawn straight is played, swing included, in quarter notes
 *     from the start of a lap
 */
public record LeadPart(Plan plan, PhraseMaker maker, UnaryOperator<Beats> played) {
  /** A clean electric guitar of General MIDI, before the band. */
  private static final Sound SOUND = new Sound(27, 104, 64, 35);

  private static final int PLAIN = 84;
  private static final int LANDING = 100;
  private static final int PICKUP = 76;

  /** How long a bent string is heard before it reaches its note: a thirty-second, at most half. */
  private static final Beats RISE = Beats.of(1, 8);

  /**
   * The phrases that land in a lap, onsets in quarter notes from its start; a pickup before it is
   * negative. A bent note is two: the one that is struck, then the one it reaches.
   *
   * @param shown which prompts' phrases; never a rest's
   */
  public Part ofLap(int lap, Predicate<Prompt> shown) {
    List<Note> notes = new ArrayList<>();
    for (Prompt prompt : plan.promptsOfLap(lap)) {
      if (shown.test(prompt)) {
        add(notes, maker.make(prompt), lap);
      }
    }
    return new Part(Role.LEAD, SOUND, notes);
  }

  private void add(List<Note> notes, MadePhrase made, int lap) {
    Form form = plan.form();
    Beats lapStart = form.length().times(lap - 1L);
    Beats landing = form.quarters(made.prompt().landOn()).minus(lapStart);
    for (Tone tone : made.phrase().tones()) {
      Beats onset = placed(landing.plus(tone.onset()));
      Beats end = end(onset, landing, tone);
      boolean main = tone.equals(made.phrase().landing());
      int velocity = main ? LANDING : tone.onset().isNegative() ? PICKUP : PLAIN;
      if (tone.bend().isEmpty()) {
        notes.add(new Note(onset, end.minus(onset), tone.pitch().midi(), velocity));
        continue;
      }
      Beats rise = RISE.min(end.minus(onset).dividedBy(2));
      Beats reached = onset.plus(rise);
      notes.add(new Note(onset, rise, tone.pitch().midi(), velocity));
      notes.add(new Note(reached, end.minus(reached), tone.reached().midi(), velocity));
    }
  }

  /** Where swing puts the start behind the end of a short note, it keeps its written length. */
  private Beats end(Beats onset, Beats landing, Tone tone) {
    Beats end = placed(landing.plus(tone.end()));
    return end.isAfter(onset) ? end : onset.plus(tone.length());
  }

  private Beats placed(Beats place) {
    Beats length = plan.form().length();
    Beats inLap = place.modulo(length);
    return played.apply(inLap).plus(place.minus(inLap));
  }
}
