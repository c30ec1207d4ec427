package hingetone.backing;

import hingetone.chart.Chart;
import hingetone.chart.Form;
import hingetone.groove.Grooves;
import hingetone.score.GeneralMidi;
import hingetone.score.Note;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * The band's bars as text, for reading: run by hand with a demo chart, a groove and a lap.
 *
 * <pre>
 * 5 high F minor | Fm7
 *   Bass Drum 1      1 X   3 x   3+1/2 x
 *   bass             1 F1   2 Ab1   3 Bb1
 *   chords           1 Ab3 C4 Eb4   3+1/2 Ab3 C4 Eb4
 * </pre>
 */
final class BandSheet {
  private BandSheet() {}

  public static void main(String[] args) {
    String groove = args[1];
    Meter meter =
        Grooves.builtIn().read(groove).value().orElseThrow().meters().stream()
            .findFirst()
            .orElse(Meter.COMMON);
    Meter wanted = args.length > 3 ? Meter.parse(args[3]).orElseThrow() : meter;
    Chart chart = BandMeasure.chart(args[0], groove, wanted);
    System.out.print(of(Backing.of(chart, Grooves.builtIn()).exact(), Integer.parseInt(args[2])));
  }

  /** A lap, bar by bar. */
  static String of(Backing backing, int lap) {
    Score score = backing.lap(lap);
    return backing.form().bars().stream()
        .map(bar -> bar(bar, score))
        .collect(Collectors.joining("\n"));
  }

  private static String bar(Form.Bar bar, Score score) {
    String chords =
        bar.chords().chords().stream()
            .map(slot -> slot.chord().map(Object::toString).orElse("N.C."))
            .collect(Collectors.joining(" "));
    List<String> lines = new ArrayList<>();
    lines.add(bar.number() + " " + bar.section().name() + " " + bar.key() + " | " + chords);
    Map<Integer, List<Note>> lanes =
        notes(bar, score, Role.DRUMS).stream()
            .collect(Collectors.groupingBy(Note::key, TreeMap::new, Collectors.toList()));
    lanes.forEach(
        (key, notes) ->
            lines.add(
                line(
                    GeneralMidi.PERCUSSION.get(key - GeneralMidi.FIRST_PERCUSSION_KEY),
                    bar,
                    notes,
                    true)));
    lines.add(line("bass", bar, notes(bar, score, Role.BASS), false));
    lines.add(line("chords", bar, notes(bar, score, Role.CHORDS), false));
    return String.join("\n", lines) + "\n";
  }

  private static List<Note> notes(Form.Bar bar, Score score, Role role) {
    return score.part(role).orElseThrow().notes().stream()
        .filter(n -> !n.onset().isBefore(bar.start()) && n.onset().isBefore(bar.end()))
        .toList();
  }

  private static String line(String name, Form.Bar bar, List<Note> notes, boolean drums) {
    Map<Beats, List<Note>> byOnset =
        notes.stream()
            .collect(Collectors.groupingBy(Note::onset, TreeMap::new, Collectors.toList()));
    String told =
        byOnset.entrySet().stream()
            .map(e -> place(bar, e.getKey()) + " " + struck(bar, e.getValue(), drums))
            .collect(Collectors.joining("   "));
    return "  %-18s %s".formatted(name, told);
  }

  private static Beats place(Form.Bar bar, Beats onset) {
    return bar.meter().toBeats(onset.minus(bar.start())).plus(Beats.ONE);
  }

  private static String struck(Form.Bar bar, List<Note> notes, boolean drums) {
    int velocity = notes.get(0).velocity();
    if (drums) {
      return "v" + velocity;
    }
    return notes.stream()
            .map(n -> bar.key().spell(n.key()).toString())
            .collect(Collectors.joining(" "))
        + " v"
        + velocity;
  }
}
