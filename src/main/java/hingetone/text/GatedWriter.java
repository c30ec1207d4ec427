package hingetone.text;

import java.io.PrintWriter;

/**
 * A writer whose every text goes through the gate ({@link Printable}), line breaks kept: whoever
 * puts a text of others into a line makes it a line first.
 */
public final class GatedWriter extends PrintWriter {
  public GatedWriter(PrintWriter to) {
    super(to, true);
  }

  @Override
  public void write(String text, int offset, int length) {
    String shown = Printable.text(text.substring(offset, offset + length));
    super.write(shown, 0, shown.length());
  }

  @Override
  public void write(char[] characters, int offset, int length) {
    write(new String(characters, offset, length));
  }

  @Override
  public void write(int character) {
    write(Character.toString((char) character));
  }
}
