package hingetone.hearing.live;

import hingetone.hearing.Labels;
import hingetone.hearing.Labels.Moment;
import hingetone.hearing.live.FirstHearing.Attack;
import hingetone.hearing.signal.Resampler;
import hingetone.hearing.signal.Sampling;
import hingetone.sound.SoundFailure;
import hingetone.sound.file.SoundReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Measures {@link FirstHearing} on the dry picked sounds of a part of the labelled set: how late it
 * tells a pitch, counted in samples from the pluck, how often it is wrong, and what of a core it
 * takes. Run by hand:
 *
 * <pre>java -cp 'src/target/test-classes:src/target/classes:target/lib/*' \
 *   hingetone.hearing.FirstHearingFigures SET</pre>
 */
final class FirstHearingFigures {
  /** A report belongs to a label at most this long before its attack, in seconds. */
  private static final double NEAR = 0.03;

  private static final double SAME_PITCH = 0.5;
  private static final double LOW_HERTZ = 160;

  private final List<Double> high = new ArrayList<>();
  private final List<Double> low = new ArrayList<>();
  private final List<String> wrong = new ArrayList<>();
  private int attacks;
  private int reports;
  private double seconds;
  private long nanos;

  private FirstHearingFigures() {}

  public static void main(String[] args) throws IOException, SoundFailure {
    FirstHearingFigures figures = new FirstHearingFigures();
    try (Stream<Path> files = Files.list(Path.of(args[0]))) {
      for (Path wav :
          files.filter(f -> f.toString().endsWith("picked-dry.wav")).sorted().toList()) {
        figures.add(wav);
      }
    }
    figures.print();
  }

  private void add(Path wav) throws IOException, SoundFailure {
    String name = wav.getFileName().toString().replace(".wav", "");
    List<Moment> moments = Labels.read(wav.resolveSibling(name + ".json"));
    List<Attack> told = heard(wav);
    attacks += moments.size();
    reports += told.size();
    for (Attack attack : told) {
      Optional<Moment> moment =
          moments.stream()
              .filter(m -> attack.at() > m.at() - NEAR && attack.at() < m.at() + 2 * NEAR)
              .findFirst();
      if (moment.isEmpty()) {
        wrong.add(String.format(Locale.ROOT, "%s %.3f s: no attack", name, attack.at()));
        continue;
      }
      double struck = moment.get().struck();
      if (Math.abs(attack.midi() - struck) > SAME_PITCH) {
        wrong.add(
            String.format(
                Locale.ROOT,
                "%s %.3f s: %.2f for %.2f after %.0f ms",
                name,
                attack.at(),
                attack.midi(),
                struck,
                1000 * (attack.heardAt() - moment.get().at())));
      } else {
        List<Double> late = Sampling.hertz(struck) < LOW_HERTZ ? low : high;
        late.add(attack.heardAt() - moment.get().at());
      }
    }
  }

  private List<Attack> heard(Path wav) throws SoundFailure {
    FirstHearing hearing = new FirstHearing();
    List<Attack> told = new ArrayList<>();
    try (SoundReader reader = SoundReader.open(wav, Optional.empty())) {
      Resampler resampler = new Resampler(reader.rate());
      for (float[] block = reader.next(); block.length > 0; block = reader.next()) {
        float[] samples = resampler.next(block);
        long start = System.nanoTime();
        told.addAll(hearing.hear(samples));
        nanos += System.nanoTime() - start;
        seconds += (double) samples.length / Sampling.RATE;
      }
    }
    return told;
  }

  private void print() {
    System.out.printf(
        Locale.ROOT,
        "%d attacks, %d reports, %d wrong (%.1f %%); %.1f %% of a core%n",
        attacks,
        reports,
        wrong.size(),
        100.0 * wrong.size() / reports,
        nanos / 1e7 / seconds);
    print("above " + (int) LOW_HERTZ + " Hz", high);
    print("below", low);
    wrong.forEach(System.out::println);
  }

  private static void print(String which, List<Double> late) {
    Collections.sort(late);
    System.out.printf(
        Locale.ROOT,
        "%s: %d right, half within %.0f ms, 95 %% within %.0f ms%n",
        which,
        late.size(),
        1000 * quantile(late, 0.5),
        1000 * quantile(late, 0.95));
  }

  private static double quantile(List<Double> sorted, double share) {
    return sorted.isEmpty() ? 0 : sorted.get((int) (share * (sorted.size() - 1)));
  }
}
