package hingetone.command;

import hingetone.chart.Chart;
import hingetone.chart.ChartBar.Slot;
import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.chart.Form.Bar;
import hingetone.score.Mark;
import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.score.Sound;
import hingetone.screen.terminal.TerminalScreen;
import hingetone.time.Beats;
import hingetone.transport.Setup;
import hingetone.transport.Transport;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Runs the screen by hand with a band of bass notes and side sticks: {@code Rehearsal CHART} with
 * sound, {@code Rehearsal CHART silent} on a silent clock.
 */
final class Rehearsal {
  private Rehearsal() {}

  public static void main(String[] args) throws IOException {
    Chart chart = ChartReader.readFile(args[0]).value().orElseThrow();
    Form form = Form.of(chart);
    boolean silent = args.length > 1 && args[1].equals("silent");
    Performance performance =
        new Performance(
            chart,
            new Performance.Music(
                "two notes", shown -> lap -> score(chart, form, lap), Optional::empty),
            false,
            Optional.empty(),
            (laps, listener, say) ->
                silent
                    ? Transport.onSilentClock(laps, Setup.USUAL, listener)
                    : picocli.CommandLine.populateCommand(new OutputOptions())
                        .open(laps, Setup.USUAL, listener, say),
            keys -> () -> {},
            new ScreenSettings(Folders.config()));
    if (TerminalScreen.isPossible()) {
      performance.onScreen();
    } else {
      performance.inLines(new PrintWriter(System.out, true), true);
    }
    System.exit(0);
  }

  private static Score score(Chart chart, Form form, int lap) {
    List<Mark> marks = new ArrayList<>();
    List<Note> bass = new ArrayList<>();
    List<Note> sticks = new ArrayList<>();
    Beats countIn = form.bar(1).meter().barLength().times(lap == 1 ? chart.countIn() : 0);
    for (Bar bar : form.bars()) {
      Beats at = bar.number() == 1 ? countIn.negated() : bar.start();
      marks.add(new Mark.OfMeter(at, bar.meter()));
      marks.add(new Mark.OfTempo(at, bar.section().tempo()));
      marks.add(new Mark.OfKey(at, bar.key()));
      if (bar.isFirstOfSection()) {
        marks.add(new Mark.OfSection(bar.start(), bar.section().name()));
      }
      for (Beats beat : bar.meter().beats()) {
        Beats onset = bar.start().plus(bar.meter().toQuarters(beat.minus(Beats.ONE)));
        sticks.add(new Note(onset, Beats.of(1, 4), 37, 90));
      }
      for (Slot slot : bar.chords().chords()) {
        Beats onset = bar.start().plus(bar.meter().toQuarters(slot.beat().minus(Beats.ONE)));
        Beats length = bar.meter().toQuarters(slot.beats());
        slot.chord()
            .ifPresent(c -> bass.add(new Note(onset, length, 36 + c.lowest().chroma(), 90)));
      }
    }
    for (Beats at = countIn.negated();
        at.isNegative();
        at = at.plus(form.bar(1).meter().beatLength())) {
      sticks.add(new Note(at, Beats.of(1, 4), 37, 100));
    }
    List<Part> parts =
        List.of(
            new Part(Role.DRUMS, Sound.of(0), sticks.stream().sorted().toList()),
            new Part(Role.BASS, Sound.of(33), bass));
    return new Score(chart.title(), countIn, form.length(), marks, parts);
  }
}
