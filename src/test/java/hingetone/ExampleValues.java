package hingetone;

import hingetone.backing.Backing;
import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.groove.Grooves;
import hingetone.ground.Ground;
import hingetone.midi.MidiEvents;
import hingetone.neck.Fretboard;
import hingetone.phrase.maker.PhraseMaker;
import hingetone.plan.Plan;
import hingetone.play.Arrangement;
import hingetone.play.Coach;
import hingetone.play.Performance;
import hingetone.review.Evening;
import hingetone.review.Review;
import hingetone.score.Score;
import hingetone.screen.State;
import hingetone.screen.States;
import hingetone.screen.picture.Frame;
import hingetone.screen.picture.Size;
import hingetone.screen.picture.TerminalLook;
import hingetone.screen.view.View;
import hingetone.sequencer.Command;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.Optional;
import javax.sound.midi.ShortMessage;

/** What the examples of the packages may take as given, under the names they use. */
public final class ExampleValues {
  public static final Chart chart =
      ChartReader.readFile("demo-charts/lantern-quay.yaml").value().orElseThrow();
  public static final Form form = Form.of(chart);
  public static final Ground ground = Ground.of(form, Fretboard.of(chart.tuning(), chart.capo()));
  public static final Plan plan = Plan.of(chart, form);
  public static final PhraseMaker maker = PhraseMaker.of(plan, ground, chart.seed());
  public static final Score score = Backing.of(chart, Grooves.builtIn()).lap(1);
  public static final ShortMessage message = MidiEvents.message(ShortMessage.NOTE_ON, 0, 60, 90);
  public static final State state = States.everyTwoBeats().get(0);
  public static final Frame frame = View.render(state, new Size(24, 80));
  public static final TerminalLook look = TerminalLook.of(Map.of(), "Linux");

  public static final Review review = review();

  // What a performance is made of is wired by its command; its example is compiled only.
  public static Arrangement arrangement;
  public static Optional<Command.Ramp> ramp;
  public static Performance.Output output;
  public static Performance.Player player;
  public static Optional<Coach.Lesson> lesson;

  private ExampleValues() {}

  private static Review review() {
    try {
      return Evening.review();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
