package hingetone.command;

import hingetone.port.FakePorts;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import javax.sound.midi.MidiMessage;
import javax.sound.midi.Receiver;

/**
 * The whole program with a MIDI port called "Recorder" that writes each message to a file, as a
 * line of hexadecimal digits, the moment it comes. By hand: {@code src/build/check-exits.sh} kills
 * it in many ways and reads the file.
 *
 * <p>Arguments: the file, then those of the program.
 */
final class RecordedPlay {
  private RecordedPlay() {}

  public static void main(String[] args) throws IOException {
    PrintStream lines = new PrintStream(Files.newOutputStream(Path.of(args[0])), true);
    FakePorts.output("Recorder").listen(new Recorder(lines));
    String[] rest = new String[args.length - 1];
    System.arraycopy(args, 1, rest, 0, rest.length);
    Main.main(rest);
  }

  private record Recorder(PrintStream lines) implements Receiver {
    @Override
    public void send(MidiMessage message, long timeStamp) {
      lines.println(HexFormat.of().formatHex(message.getMessage()));
      if (lines.checkError()) {
        throw new UncheckedIOException(new IOException("the record cannot be written"));
      }
    }

    @Override
    public void close() {}
  }
}
