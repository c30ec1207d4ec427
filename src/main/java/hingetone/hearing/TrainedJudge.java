package hingetone.hearing;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;

/**
 * A small trained judge: measures in, the probability of each class out. One hidden layer of tanh,
 * then softmax. Its numbers stand in a text beside this class: how many inputs, hidden units and
 * classes, each input's mean and scale, then row by row the weights with the bias last.
 *
 * <p>{@code src/build/hearing/train.py} makes those texts from labelled sounds.
 */
final class TrainedJudge {
  private final double[] means;
  private final double[] scales;
  private final double[][] hidden;
  private final double[][] output;

  private TrainedJudge(double[] means, double[] scales, double[][] hidden, double[][] output) {
    this.means = means;
    this.scales = scales;
    this.hidden = hidden;
    this.output = output;
  }

  /** Reads the numbers in a text of this package. */
  static TrainedJudge named(String name) {
    try (InputStream in = TrainedJudge.class.getResourceAsStream(name);
        BufferedReader lines =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.US_ASCII))) {
      Deque<Double> numbers = new ArrayDeque<>();
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        if (!line.startsWith("#")) {
          for (String number : line.split(" ")) {
            numbers.add(Double.valueOf(number));
          }
        }
      }
      int inputs = numbers.remove().intValue();
      int units = numbers.remove().intValue();
      int classes = numbers.remove().intValue();
      return new TrainedJudge(
          row(numbers, inputs),
          row(numbers, inputs),
          rows(numbers, units, inputs + 1),
          rows(numbers, classes, units + 1));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static double[][] rows(Deque<Double> numbers, int count, int length) {
    double[][] rows = new double[count][];
    for (int i = 0; i < count; i++) {
      rows[i] = row(numbers, length);
    }
    return rows;
  }

  private static double[] row(Deque<Double> numbers, int length) {
    double[] row = new double[length];
    for (int i = 0; i < length; i++) {
      row[i] = numbers.remove();
    }
    return row;
  }

  /** The probability of each class; they add up to 1. */
  double[] judge(double[] measures) {
    double[] inputs = new double[measures.length];
    for (int i = 0; i < inputs.length; i++) {
      inputs[i] = (measures[i] - means[i]) / scales[i];
    }
    double[] units = weighted(hidden, inputs);
    for (int i = 0; i < units.length; i++) {
      units[i] = Math.tanh(units[i]);
    }
    double[] classes = weighted(output, units);
    double sum = 0;
    for (int i = 0; i < classes.length; i++) {
      classes[i] = Math.exp(Math.min(50, classes[i]));
      sum += classes[i];
    }
    for (int i = 0; i < classes.length; i++) {
      classes[i] /= sum;
    }
    return classes;
  }

  private static double[] weighted(double[][] weights, double[] values) {
    double[] sums = new double[weights.length];
    for (int row = 0; row < weights.length; row++) {
      sums[row] = weights[row][values.length];
      for (int i = 0; i < values.length; i++) {
        sums[row] += weights[row][i] * values[i];
      }
    }
    return sums;
  }
}
