package hingetone.text;

/** Other people's text, fit to stand in a message. */
public final class Quote {
  private static final int LONGEST = 40;

  private Quote() {}

  /** The text in one line, cut where it is long. */
  public static String of(String text) {
    String line = text.strip().replaceAll("\\s+", " ");
    int end = Math.min(line.length(), LONGEST);
    return line.length() > LONGEST
        ? line.substring(0, Character.isHighSurrogate(line.charAt(end - 1)) ? end - 1 : end) + "…"
        : line;
  }
}
