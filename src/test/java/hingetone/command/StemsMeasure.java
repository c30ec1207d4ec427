package hingetone.command;

import hingetone.backing.Backing;
import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.groove.Groove;
import hingetone.groove.Grooves;
import hingetone.phrase.maker.LeadPart;
import hingetone.plan.ExampleChoice;
import hingetone.score.Part;
import hingetone.score.Score;
import hingetone.sound.SoundBank;
import hingetone.sound.file.Mixdown;
import hingetone.sound.file.SoundFile;
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
 * <p>Arguments: General MIDI SoundFonts to measure beside the built-in sounds.
 */
final class StemsMeasure {
  private StemsMeasure() {}

  public static void main(String[] args) throws Exception {
    List<SoundBank> banks = new ArrayList<>(List.of(SoundBank.builtIn()));
    for (String font : args) {
      banks.add(SoundBank.read(Path.of(font)));
    }
    System.out.println("stems of\tparts\t" + banks.stream().map(SoundBank::name).toList());
    for (Map.Entry<String, Score> piece : pieces().entrySet()) {
      Score score = piece.getValue();
      StringBuilder row = new StringBuilder(piece.getKey() + "\t" + score.parts().size());
      for (SoundBank bank : banks) {
        row.append(String.format(Locale.ROOT, "\t%.1f", difference(score, bank)));
      }
      System.out.println(row);
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
    LeadPart lead = ExamplePhrases.of(chart, Grooves.builtIn()).lead(backing::played);
    return backing
        .lastLap(1)
        .with(
            lead.ofLap(1, ExampleChoice.ALL.of(lead.plan(), Position.of(1 - chart.countIn(), 1))));
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
