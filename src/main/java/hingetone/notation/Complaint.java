package hingetone.notation;

import java.util.Locale;

/** Says what is wrong with a word that is not a note. */
final class Complaint {
  private static final String NOTE =
      "I was reading note text and expected a note such as A2q (letter, octave, length), F#3i. or"
          + " Rh.";

  private Complaint() {}

  static Token.NotANote about(String word) {
    String upper = word.toUpperCase(Locale.ROOT);
    if (word.isEmpty()) {
      return complain("a note is missing beside the +", "Join notes with +: C4h+E4h+G4h.");
    }
    if (word.indexOf('$') >= 0 || word.indexOf('[') >= 0) {
      return complain("\"" + shown(word) + "\" cannot stand in note text", NOTE);
    }
    if (upper.matches("[A-G](#{1,2}|B{1,2})?(-?[WHQISTXO].*)?")
        && !upper.matches("[A-G]B[0-9].*")) {
      return complain("\"" + shown(word) + "\" has no octave", "Middle C is C4: write C4q.");
    }
    if (upper.matches("(R|[A-G](#{1,2}|B{1,2})?[0-9])-?(A[0-9]*)?")) {
      return complain(
          "\"" + shown(word) + "\" has no length",
          "Lengths are w h q i s t x o: whole, half, quarter, eighth, sixteenth and so on.");
    }
    if (upper.matches("[VITLK@&].*")) {
      return complain(
          "\"" + shown(word) + "\" is no note",
          "Note text here is one line of notes: no voices, instruments, tempos or keys.");
    }
    return complain("\"" + shown(word) + "\" is no note", NOTE);
  }

  private static Token.NotANote complain(String message, String expected) {
    return new Token.NotANote(message, expected);
  }

  private static String shown(String word) {
    return word.length() > 20 ? word.substring(0, 20) + "…" : word;
  }
}
