package hingetone.take;

import hingetone.midi.Received;
import java.util.Optional;

/**
 * Something that makes a take, in the order in which it was told: bars and beats as they are heard,
 * and what the instrument sends. As text it is one line, so that a take grows line by line.
 *
 * <pre>{@code
 * TakeEvent.parse("beat 500 2");   // → the second beat of its bar, heard at 500 ns
 * }</pre>
 */
public sealed interface TakeEvent {
  /** A bar begins: its number, laps counted on, and how far its keys lie from the chart's. */
  record Bar(int number, int keyShift) implements TakeEvent {}

  /** A beat of the bar that has begun last is heard, in nanoseconds of the machine's clock. */
  record Beat(long nanos, int beat) implements TakeEvent {}

  /** The music stands still in the beat that was told last. */
  record Pause() implements TakeEvent {}

  /** A message of the instrument. */
  record Sent(Received message) implements TakeEvent {}

  /** The instrument is gone. */
  record Lost(long nanos) implements TakeEvent {}

  /** The line that {@link #parse} reads. */
  default String text() {
    if (this instanceof Bar bar) {
      return "bar " + bar.number + " " + bar.keyShift;
    }
    if (this instanceof Beat beat) {
      return "beat " + beat.nanos + " " + beat.beat;
    }
    if (this instanceof Sent sent) {
      Received m = sent.message;
      return "sent "
          + String.join(
              " ",
              Long.toString(m.nanos()),
              Integer.toString(m.command()),
              Integer.toString(m.channel()),
              Integer.toString(m.first()),
              Integer.toString(m.second()));
    }
    return this instanceof Lost lost ? "lost " + lost.nanos : "pause";
  }

  /** Reads a line; empty where it is none, as the last line may be after a kill. */
  static Optional<TakeEvent> parse(String line) {
    String[] words = line.split(" ", -1);
    try {
      return Optional.ofNullable(
          switch (words[0] + " " + words.length) {
            case "bar 3" -> new Bar(number(words[1]), number(words[2]));
            case "beat 3" -> new Beat(Long.parseLong(words[1]), number(words[2]));
            case "pause 1" -> new Pause();
            case "lost 2" -> new Lost(Long.parseLong(words[1]));
            case "sent 6" ->
                new Sent(
                    new Received(
                        Long.parseLong(words[1]),
                        number(words[2]),
                        number(words[3]),
                        number(words[4]),
                        number(words[5])));
            default -> null;
          });
    } catch (NumberFormatException e) {
      return Optional.empty();
    }
  }

  private static int number(String text) {
    return Integer.parseInt(text);
  }
}
