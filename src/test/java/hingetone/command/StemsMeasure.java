package hingetone.command;

import hingetone.backing.Backing;
import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.exchange.Lead;
import hingetone.exchange.Shown;
import hingetone.groove.Groove;
import hingetone.groove.Grooves;
import hingetone.score.Part;
import hingetone.score.Score;
import hingetone.sound.Mixdown;
import hingetone.sound.SoundBank;
import hingetone.sound.SoundFile;
import hingetone.text.Page;
import hingetone.time.Position;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Run by hand: plays every demo chart and every groove, with count-in, example phrases and ending,
 * all parts together and each alone, and measures how far the parts added up are from the whole.
 *
 * <p>Arguments: the page to write the table into, or {@code -} to print it; then General MIDI
 * SoundFonts to measure beside the built-in sounds.
 */
final class StemsMeasure {
  private StemsMeasure() {}

  public static void main(String[] args) throws Exception {
    List<SoundBank> banks = new ArrayList<>(List.of(SoundBank.builtIn()));
    for (String font : List.of(args).subList(1, args.length)) {
      banks.add(SoundBank.read(Path.of(font)));
    }
    StringBuilder table = new StringBuilder("| stems of | parts |");
    banks.forEach(bank -> table.append(" ").append(bank.name()).append(" |"));
    table.append("\n|---|---|").append("---|".repeat(banks.size())).append("\n");
    for (Map.Entry<String, Score> piece : pieces().entrySet()) {
      Score score = piece.getValue();
      table.append("| ").append(piece.getKey()).append(" | ").append(score.parts().size());
      for (SoundBank bank : banks) {
        table.append(String.format(Locale.ROOT, " | %.1f", difference(score, bank)));
      }
      table.append(" |\n");
    }
    if (args[0].equals("-")) {
      System.out.print(table);
    } else {
      Page.replaceTable(Path.of(args[0]), "| stems of |", table.toString().replace("| -", "| −"));
    }
  }

  /** The demo charts and a piece in each groove, by name. */
  private static Map<String, Score> pieces() throws IOException {
    Map<String, Score> pieces = new LinkedHashMap<>();
    try (Stream<Path> charts = Files.list(Path.of("demo-charts"))) {
      for (Path chart : charts.sorted().toList()) {
        pieces.put(
            chart.getFileName().toString(),
            score(ChartReader.readFile(chart.toString()).value().orElseThrow()));
      }
    }
    for (Groove groove : Grooves.builtIn().all()) {
      pieces.put(groove.name(), score(MixMeasure.chart(groove).withCountIn(1)));
    }
    return pieces;
  }

  /** One lap with count-in, ending and every example phrase. */
  static Score score(Chart chart) {
    Backing backing = Backing.of(chart, Grooves.builtIn());
    Lead lead = ExamplePhrases.of(chart, Grooves.builtIn()).lead(backing::played);
    return backing
        .lastLap(1)
        .with(lead.ofLap(1, Shown.ALL.of(lead.plan(), Position.of(1 - chart.countIn(), 1))));
  }

  /** The parts played alone and added up, less the whole: its level against the whole, in dB. */
  static double difference(Score score, SoundBank bank) throws Exception {
    Mixdown mixdown = Mixdown.of(score, bank, SoundFile.SAMPLE_RATE);
    List<float[]> whole = new ArrayList<>();
    mixdown.play((stereo, frames, done) -> whole.add(stereo.clone()));
    double level = energy(whole);
    long frames = (long) whole.size() * whole.get(0).length / 2;
    for (Part part : score.parts()) {
      int[] block = {0};
      mixdown
          .only(part.role())
          .play(frames, (stereo, count, done) -> subtract(stereo, whole.get(block[0]++)));
    }
    return 10 * Math.log10(energy(whole) / level);
  }

  private static void subtract(float[] part, float[] from) {
    for (int i = 0; i < part.length; i++) {
      from[i] -= part[i];
    }
  }

  private static double energy(List<float[]> blocks) {
    double sum = 0;
    for (float[] block : blocks) {
      for (float sample : block) {
        sum += (double) sample * sample;
      }
    }
    return sum;
  }
}
