package hingetone.handout;

import hingetone.chart.Chart;
import hingetone.chart.Form;
import hingetone.handout.SheetNote.Bend;
import hingetone.handout.SheetNote.Way;
import hingetone.neck.Tuning;
import hingetone.phrase.Tone;
import hingetone.phrase.maker.MadePhrase;
import hingetone.phrase.maker.PhraseMaker;
import hingetone.plan.Plan;
import hingetone.plan.Prompt;
import hingetone.text.Choice;
import hingetone.time.Beats;
import hingetone.time.Position;
import java.util.ArrayList;
import java.util.List;

/**
 * What a page of notation holds.
 *
 * @param title what it is called
 * @param tuning the tuning of the tab, without the capo
 * @param capo the fret of the capo, 0 for none
 * @param form the bars that the notes stand in
 * @param charted whether the form is a chart's, whose sections and chords are written too
 * @param firstBar the first bar that is written, 1 or one before it
 * @param lastBar the last
 * @param notes the notes, in order
 * @param words what is written above places, in order
 */
record Sheet(
    String title,
    Tuning tuning,
    int capo,
    Form form,
    boolean charted,
    int firstBar,
    int lastBar,
    List<SheetNote> notes,
    List<Words> words) {

  /** A word or two above a place. */
  record Words(Position at, String text) {}

  Sheet {
    notes = List.copyOf(notes);
    words = List.copyOf(words);
  }

  /** The example phrases of a plan. */
  static Sheet of(Chart chart, Plan plan, PhraseMaker maker, int laps) {
    List<SheetNote> notes = new ArrayList<>();
    List<Words> words = new ArrayList<>();
    for (int lap = 1; lap <= laps; lap++) {
      for (Prompt prompt : plan.promptsOfLap(lap)) {
        if (!prompt.isRest()) {
          notes.addAll(notes(plan.form(), maker.make(prompt)));
          words.add(words(prompt));
        }
      }
    }
    int last = laps * plan.form().bars().size();
    return new Sheet(
        chart.title(),
        chart.tuning(),
        chart.capo(),
        plan.form(),
        true,
        1 - chart.countIn(),
        last,
        notes,
        words);
  }

  /** Who lands where. */
  private static Words words(Prompt prompt) {
    String role = Choice.word(prompt.role());
    String answered = prompt.repliesTo().map(i -> " to " + i).orElse("");
    return new Words(prompt.landOn(), role + " " + prompt.index() + answered);
  }

  private static List<SheetNote> notes(Form form, MadePhrase made) {
    Beats landing = form.quarters(made.prompt().landOn());
    List<SheetNote> notes = new ArrayList<>();
    for (int i = 0; i < made.spots().size(); i++) {
      Tone tone = made.phrase().tones().get(i);
      notes.add(
          SheetNote.picked(
              landing.plus(tone.onset()),
              landing.plus(tone.end()),
              tone.pitch(),
              made.spots().get(i),
              bends(tone)));
    }
    return notes;
  }

  private static List<Bend> bends(Tone tone) {
    int semitones = tone.reached().midi() - tone.pitch().midi();
    return tone.bend().map(reached -> new Bend(semitones, Way.UP)).stream().toList();
  }
}
