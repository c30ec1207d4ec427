package hingetone.command;

import hingetone.backing.Backing;
import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.groove.Groove;
import hingetone.groove.Grooves;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.sound.SoundBank;
import hingetone.sound.file.Mixdown;
import hingetone.sound.file.SoundFile;
import hingetone.sound.level.LoudnessMeter;
import hingetone.text.Page;
import hingetone.text.reading.Source;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Run by hand: plays each groove at a middle tempo, every part alone and the band together, on the
 * built-in sounds and on SoundFonts, and measures how loud each part lies in the mix (ITU-R
 * BS.1770-4, integrated) and how loud the finished file is.
 *
 * <p>Arguments: the page to write the table into, then General MIDI SoundFonts.
 */
final class MixMeasure {
  private static final int SAMPLE_RATE = SoundFile.SAMPLE_RATE;

  private MixMeasure() {}

  public static void main(String[] args) throws Exception {
    StringBuilder table = new StringBuilder();
    table.append("| mix | bank | whole | drums | bass | chords | file LUFS | file dBTP |\n");
    table.append("|---|---|---|---|---|---|---|---|\n");
    List<SoundBank> banks = new ArrayList<>(List.of(SoundBank.builtIn()));
    for (int font = 1; font < args.length; font++) {
      banks.add(SoundBank.read(Path.of(args[font])));
    }
    for (Groove groove : Grooves.builtIn().all()) {
      for (SoundBank bank : banks) {
        table.append(row(groove, bank)).append('\n');
      }
    }
    Page.replaceTable(Path.of(args[0]), "| mix |", table.toString());
  }

  /** Sixteen bars over two keys, in the first of a groove's meters. */
  static Chart chart(Groove groove) {
    String meter = groove.meters().isEmpty() ? "4/4" : groove.meters().get(0).toString();
    int tempo = groove.meters().isEmpty() ? 110 : (groove.slowest() + groove.fastest()) / 2;
    String text =
        """
        tempo: %d
        meter: %s
        groove: %s
        count-in: 0
        sections:
          low:
            key: A minor
            bars: |
              | Am7 | Am7 | Dm7 | Am7 |
              | F7 | E7 | Am7 | E7 |
          high:
            key: C minor
            bars: |
              | Cm7 | Cm7 | Fm7 | Cm7 |
              | Ab7 | G7 | Cm7 | E7 |
        """
            .formatted(tempo, meter, groove.name());
    return ChartReader.read(new Source("mix", text)).value().orElseThrow();
  }

  private static String row(Groove groove, SoundBank bank) throws Exception {
    Mix mix = of(groove, bank);
    StringBuilder row = new StringBuilder("| " + groove.name() + " | " + bank.name());
    row.append(number(mix.whole()));
    mix.parts().values().forEach(part -> row.append(number(part)));
    Path file = Files.createTempFile("mix", ".wav");
    SoundFile.Result result = SoundFile.write(score(groove), bank, file, done -> {});
    Files.delete(file);
    return row + number(result.loudness()) + number(result.truePeak()) + " |";
  }

  /**
   * How loud a band is.
   *
   * @param whole all together, in LUFS
   * @param parts each alone against the whole, in LU
   */
  record Mix(double whole, Map<Role, Double> parts) {}

  static Mix of(Groove groove, SoundBank bank) throws Exception {
    Score score = score(groove);
    Mixdown whole = Mixdown.of(score, bank, SAMPLE_RATE);
    double together = loudness(whole);
    Map<Role, Double> parts = new EnumMap<>(Role.class);
    for (Part part : score.parts()) {
      parts.put(part.role(), loudness(whole.only(part.role())) - together);
    }
    return new Mix(together, parts);
  }

  private static Score score(Groove groove) {
    return Backing.of(chart(groove), Grooves.builtIn()).lap(1);
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, " | %.1f", value).replace("-", "−");
  }

  private static double loudness(Mixdown mixdown) throws Exception {
    LoudnessMeter meter = new LoudnessMeter(SAMPLE_RATE);
    mixdown.play((stereo, frames, done) -> meter.add(stereo, frames));
    return meter.integrated();
  }
}
