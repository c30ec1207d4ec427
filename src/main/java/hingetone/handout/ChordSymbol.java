package hingetone.handout;

import hingetone.theory.Chord;
import hingetone.theory.NoteName;
import java.util.Optional;

/** A chord symbol in MusicXML: {@code harmony}. */
final class ChordSymbol {
  private ChordSymbol() {}

  /** Adds the symbol of a chord, or N.C. */
  static void add(Xml xml, Optional<Chord> chord) {
    xml.open("harmony");
    chord.ifPresentOrElse(c -> chord(xml, c), () -> noChord(xml));
    xml.close();
  }

  private static void noChord(Xml xml) {
    xml.open("root").leaf("root-step", "C", "text", "").close();
    xml.leaf("kind", "none", "text", "N.C.");
  }

  private static void chord(Xml xml, Chord chord) {
    HarmonyKind kind = HarmonyKind.of(chord);
    xml.open("root");
    name(xml, "root", chord.root());
    xml.close();
    xml.leaf("kind", kind.name(), "text", chord.quality().suffix());
    chord
        .bass()
        .ifPresent(
            bass -> {
              xml.open("bass");
              name(xml, "bass", bass);
              xml.close();
            });
    for (HarmonyKind.Degree degree : kind.differences(chord)) {
      xml.open("degree", "print-object", "no").leaf("degree-value", degree.value());
      xml.leaf("degree-alter", degree.alter()).leaf("degree-type", degree.type()).close();
    }
  }

  private static void name(Xml xml, String prefix, NoteName name) {
    xml.leaf(prefix + "-step", name.letter());
    if (name.alteration() != 0) {
      xml.leaf(prefix + "-alter", name.alteration());
    }
  }
}
