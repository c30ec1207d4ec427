package hingetone.hearing;

import hingetone.hearing.Labels.Moment;
import hingetone.hearing.signal.EchoFilter;
import hingetone.hearing.signal.EchoFinder;
import hingetone.hearing.signal.RecentSamples;
import hingetone.hearing.signal.RecentSlices;
import hingetone.hearing.signal.Resampler;
import hingetone.hearing.signal.Sampling;
import hingetone.hearing.signal.Slices;
import hingetone.sound.SoundFailure;
import hingetone.sound.file.SoundReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;

/**
 * Writes what the judges learn from: {@code onsets.ex}, {@code pairs.ex} and {@code techniques.ex}
 * for {@code src/build/hearing/train.py}, from a part of the labelled set. Run by hand after a
 * change of {@link OnsetEvidence} or {@link PairEvidence}:
 *
 * <pre>java -cp 'src/target/test-classes:src/target/classes:target/lib/*' \
 *   hingetone.hearing.TrainingExamples SET OUT</pre>
 */
final class TrainingExamples {
  /** A candidate this near a label may be its onset, in seconds. */
  private static final double NEAR = 0.045;

  /** What a second between candidate and label weighs against the logarithm of the flux. */
  private static final double AWAY = 40;

  private static final int LEFT_OUT = -1;

  /** A pitch this near a label's is that label's, in semitones. */
  private static final double SAME_PITCH = 0.35;

  /** A note whose end is this far from the label's pitch is not that label's, in semitones. */
  private static final double RIGHT = 1.2;

  /** Of the pairs that do not sound, the likest ones of each moment, and some of the others. */
  private static final int LIKEST = 10;

  private static final int OTHERS = 2;

  private final String name;
  private final RecentSamples tape = new RecentSamples(1 << 21);
  private final RecentSlices history = new RecentSlices();
  private final List<Moment> moments;
  private final Random random = new Random(1);

  private TrainingExamples(Path wav, List<Moment> moments) throws SoundFailure {
    name = wav.getFileName().toString().replace(".wav", "");
    this.moments = moments;
    hear(wav);
  }

  public static void main(String[] args) throws IOException, SoundFailure {
    Path out = Files.createDirectories(Path.of(args[1]));
    List<String> onsets = new ArrayList<>();
    List<String> pairs = new ArrayList<>();
    List<String> techniques = new ArrayList<>();
    for (Path wav : sounds(Path.of(args[0]))) {
      Path json = wav.resolveSibling(wav.getFileName().toString().replace(".wav", ".json"));
      TrainingExamples examples = new TrainingExamples(wav, Labels.read(json));
      onsets.addAll(examples.onsets());
      pairs.addAll(examples.pairs());
      techniques.addAll(examples.techniques());
    }
    Files.write(out.resolve("onsets.ex"), onsets);
    Files.write(out.resolve("pairs.ex"), pairs);
    Files.write(out.resolve("techniques.ex"), techniques);
  }

  private static List<Path> sounds(Path set) throws IOException {
    try (Stream<Path> files = Files.list(set)) {
      return files.filter(file -> file.toString().endsWith(".wav")).sorted().toList();
    }
  }

  /** As transcribe hears it: at the rate of the room, echoes undone. */
  private void hear(Path wav) throws SoundFailure {
    EchoFinder finder = new EchoFinder();
    List<float[]> blocks = new ArrayList<>();
    try (SoundReader reader = SoundReader.open(wav, Optional.empty())) {
      Resampler resampler = new Resampler(reader.rate());
      for (float[] block = reader.next(); block.length > 0; block = reader.next()) {
        blocks.add(resampler.next(block));
      }
      blocks.add(resampler.rest());
    }
    blocks.forEach(finder::take);
    Optional<EchoFilter> echoes = finder.found();
    Slices slices = new Slices(tape);
    for (float[] block : blocks) {
      float[] clean = echoes.map(filter -> filter.next(block)).orElse(block);
      tape.add(clean, clean.length);
      slices.ready().forEach(history::add);
    }
    slices.rest().forEach(history::add);
  }

  /** Every candidate: 0 where nothing begins, else 1 and the kind's place in {@link Onset.Kind}. */
  private List<String> onsets() {
    List<double[]> measures = new ArrayList<>();
    List<Double> times = new ArrayList<>();
    for (long frame = 2; frame < history.end(); frame++) {
      if (OnsetEvidence.candidate(history, frame)) {
        measures.add(new OnsetEvidence(history, frame).measures());
        times.add(frame / Sampling.FRAME_RATE);
      }
    }
    int[] classes = classes(times, measures);
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < classes.length; i++) {
      lines.add(line(classes[i], measures.get(i)));
    }
    return lines;
  }

  /** Of the candidates near a label the strongest is its onset; the others are left out. */
  private int[] classes(List<Double> times, List<double[]> measures) {
    int[] classes = new int[times.size()];
    for (Moment moment : moments) {
      int best = -1;
      double strongest = -Double.MAX_VALUE;
      for (int i = 0; i < classes.length; i++) {
        double away = Math.abs(times.get(i) - moment.at());
        double strength = measures.get(i)[0] - AWAY * away;
        if (away < NEAR && classes[i] <= 0) {
          classes[i] = LEFT_OUT;
          best = strength > strongest ? i : best;
          strongest = Math.max(strongest, strength);
        }
      }
      if (best >= 0) {
        classes[best] = moment.kind().ordinal() + 1;
      }
    }
    return classes;
  }

  /** Of each note found that is no double stop what it was, by its place in {@link Technique}. */
  private List<String> techniques() {
    NoteMaker maker = new NoteMaker(tape, history);
    List<Onset> onsets = new Onsets(history).ready(true);
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < onsets.size(); i++) {
      long end = i + 1 < onsets.size() ? onsets.get(i + 1).frame() : history.end();
      Optional<Moment> moment = moment(NoteMaker.seconds(onsets.get(i).frame()));
      Optional<TechniqueEvidence> evidence = maker.evidence(onsets.get(i), end);
      if (moment.isPresent() && evidence.isPresent()) {
        boolean right = Math.abs(evidence.get().reached() - moment.get().pitches().get(0)) < RIGHT;
        int kind = right ? moment.get().technique().ordinal() : LEFT_OUT;
        lines.add(line(kind, evidence.get().measures()));
      }
    }
    return lines;
  }

  /** The single note that begins at a time. */
  private Optional<Moment> moment(double at) {
    return moments.stream()
        .filter(moment -> Math.abs(moment.at() - at) < NEAR && moment.pitches().size() == 1)
        .min(Comparator.comparingDouble(moment -> Math.abs(moment.at() - at)));
  }

  /** Of each moment the pair that sounds, 1, and some that do not, 0. */
  private List<String> pairs() {
    Pairs pairs = new Pairs(tape, history);
    List<String> lines = new ArrayList<>();
    for (Moment moment : moments) {
      long from = Math.round(moment.at() * Sampling.FRAME_RATE);
      long to = Math.round(moment.end() * Sampling.FRAME_RATE);
      List<double[]> wrong = new ArrayList<>();
      for (Pairs.Hypothesis hypothesis : pairs.hypotheses(from, to)) {
        if (sounds(hypothesis, moment.pitches())) {
          lines.add(line(1, hypothesis.measures()));
        } else {
          wrong.add(hypothesis.measures());
        }
      }
      some(wrong).forEach(measures -> lines.add(line(0, measures)));
    }
    return lines;
  }

  private static boolean sounds(Pairs.Hypothesis pair, List<Double> pitches) {
    return pitches.size() == 2
        && Math.abs(pair.low() - pitches.get(0)) < SAME_PITCH
        && Math.abs(pair.high() - pitches.get(1)) < SAME_PITCH;
  }

  private List<double[]> some(List<double[]> wrong) {
    wrong.sort(Comparator.comparingDouble(TrainingExamples::likeness).reversed());
    List<double[]> some = new ArrayList<>(wrong.subList(0, Math.min(LIKEST, wrong.size())));
    for (int i = 0; i < OTHERS && wrong.size() > LIKEST; i++) {
      some.add(wrong.get(LIKEST + random.nextInt(wrong.size() - LIKEST)));
    }
    return some;
  }

  /** The softer string's own partials, and the share of the sound that both explain. */
  private static double likeness(double[] measures) {
    return Math.min(measures[6], measures[7]) + 30 * measures[12];
  }

  private String line(int kind, double[] measures) {
    StringBuilder line = new StringBuilder(name + " " + kind);
    Arrays.stream(measures).forEach(m -> line.append(String.format(Locale.ROOT, " %.4f", m)));
    return line.toString();
  }
}
