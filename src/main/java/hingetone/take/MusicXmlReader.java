package hingetone.take;

import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * Reads what was played from a MusicXML file (4.0, {@code score-partwise}): pitches, lengths, ties,
 * strings, bends, slides, hammer-ons and vibrato of one part, its tempos, and the number of its
 * first bar. Repeats are read once.
 *
 * <p>Nothing outside the file is opened: document types and entities are not followed.
 */
public final class MusicXmlReader {
  private static final long MOST_BYTES = 16 << 20;
  private static final int DEEPEST = 64;
  private static final int MOST_NOTES = 250_000;
  private static final double MOST_QUARTERS = 100_000;
  private static final double USUAL_MICROS = 500_000;
  private static final double FASTEST = 2000;

  private final String file;
  private final XMLStreamReader xml;
  private final Map<String, String> names = new HashMap<>();
  private final List<TakeLine> lines = new ArrayList<>();
  private final List<TakeReader.TempoFrom> tempos = new ArrayList<>();
  private Optional<TakeReader.Cue> first = Optional.empty();
  private double length;
  private double bar = 4;
  private int depth;
  private int parts;
  private int count;

  private MusicXmlReader(String file, XMLStreamReader xml) {
    this.file = file;
    this.xml = xml;
    tempos.add(new TakeReader.TempoFrom(0, USUAL_MICROS));
  }

  /**
   * Reads a file.
   *
   * @throws IOException with a sentence for people where it is none, or broken
   */
  public static TakeReader read(Path file, LineWanted wanted) throws IOException {
    if (Files.size(file) > MOST_BYTES) {
      throw new IOException(file + " is larger than any take: more than 16 MB.");
    }
    if (Files.size(file) == 0) {
      throw new IOException(file + " is empty.");
    }
    try {
      String text = decoded(Files.readAllBytes(file));
      MusicXmlReader reader = new MusicXmlReader(file.toString(), stream(text));
      reader.document();
      return reader.take(wanted);
    } catch (XMLStreamException | RuntimeException e) {
      // The JDK's reader throws whatever a broken file makes it meet.
      throw new IOException(file + " is no MusicXML file that can be read" + place(e) + ".", e);
    }
  }

  /**
   * The text of a file: UTF-16 where a byte-order mark says so, Latin-1 where its declaration does,
   * else UTF-8. What is damaged is replaced, for the JDK's reader would complain past us.
   */
  private static String decoded(byte[] bytes) {
    boolean wide = bytes.length > 1 && (bytes[0] & bytes[1] & 0xFE) == 0xFE;
    String head = new String(bytes, 0, Math.min(100, bytes.length), StandardCharsets.ISO_8859_1);
    boolean latin = head.matches("(?is).*encoding=[\"']iso-8859-1[\"'].*");
    String text =
        new String(
            bytes,
            wide
                ? StandardCharsets.UTF_16
                : latin ? StandardCharsets.ISO_8859_1 : StandardCharsets.UTF_8);
    return text.startsWith("\uFEFF") ? text.substring(1) : text;
  }

  private static XMLStreamReader stream(String text) throws XMLStreamException {
    XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    factory.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, false);
    factory.setProperty(XMLInputFactory.IS_COALESCING, true);
    factory.setXMLResolver((publicId, systemId, base, namespace) -> InputStream.nullInputStream());
    return factory.createXMLStreamReader(new StringReader(text));
  }

  private static String place(Exception e) {
    return e instanceof XMLStreamException broken && broken.getLocation() != null
        ? ": it breaks in line " + Math.max(1, broken.getLocation().getLineNumber())
        : "";
  }

  private TakeReader take(LineWanted wanted) throws IOException {
    TakeLine.Chosen line = TakeLine.of(file, lines, wanted);
    return new TakeReader(
        first.stream().toList(),
        tempos,
        line.notes(),
        Math.max(1, length),
        line.told(),
        Optional.of(bar));
  }

  // The document

  private void document() throws XMLStreamException, IOException {
    if (!enter()) {
      throw new IOException(file + " is no MusicXML file.");
    }
    if (!xml.getLocalName().equals("score-partwise")) {
      throw new IOException(
          file
              + " is no MusicXML file of parts: it begins with "
              + shown(xml.getLocalName())
              + ".");
    }
    while (enter()) {
      switch (xml.getLocalName()) {
        case "part-list" -> partList();
        case "part" -> part();
        default -> skip();
      }
    }
  }

  private static String shown(String name) {
    return "<" + name.substring(0, Math.min(40, name.length())) + ">";
  }

  private void partList() throws XMLStreamException {
    while (enter()) {
      String id = attribute("id");
      if (!xml.getLocalName().equals("score-part")) {
        skip();
        continue;
      }
      while (enter()) {
        if (xml.getLocalName().equals("part-name")) {
          names.put(id, text());
        } else {
          skip();
        }
      }
    }
  }

  private void part() throws XMLStreamException, IOException {
    String name = names.getOrDefault(attribute("id"), "");
    Part part = new Part(lines.isEmpty());
    int number = 0;
    while (enter()) {
      if (xml.getLocalName().equals("measure")) {
        number++;
        part.measure(number);
      } else {
        skip();
      }
    }
    length = Math.max(length, part.measureStart);
    List<PlacedNote> notes = part.notes();
    int index = parts++;
    if (!notes.isEmpty()) {
      lines.add(new TakeLine(index + 1, Optional.empty(), name, notes));
    }
  }

  /** A part as it is read; places in quarter notes from its start. */
  private final class Part {
    private final boolean tells;
    private final List<WrittenTone> tones = new ArrayList<>();
    private final Map<Integer, WrittenTone> tied = new HashMap<>();
    private double divisions = 1;
    private double barLength = 4;
    private double at;
    private double lastOnset;
    private double measureStart;
    private double reach;

    Part(boolean tells) {
      this.tells = tells;
    }

    List<PlacedNote> notes() {
      return tones.stream()
          .map(WrittenTone::placed)
          .sorted(
              Comparator.comparingDouble(PlacedNote::at).thenComparingDouble(PlacedNote::struck))
          .toList();
    }

    void measure(int index) throws XMLStreamException, IOException {
      String number = attribute("number");
      boolean implicit = attribute("implicit").equals("yes");
      at = measureStart;
      reach = at;
      while (enter()) {
        switch (xml.getLocalName()) {
          case "attributes" -> attributes();
          case "note" -> note();
          case "backup" -> at = Math.max(measureStart, at - duration());
          case "forward" -> at += duration();
          case "direction" -> direction();
          case "sound" -> sound();
          default -> skip();
        }
        reach = Math.max(reach, at);
      }
      if (index == 1 && tells) {
        begin(number, implicit);
      }
      boolean empty = reach - measureStart < 1e-9;
      measureStart = empty ? measureStart + barLength : reach;
      if (measureStart > MOST_QUARTERS) {
        throw new IOException(
            file + " is longer than any take: " + (int) MOST_QUARTERS + " quarters.");
      }
    }

    /** Which bar the file begins with; one that is shorter than a bar ends where bar 1 begins. */
    private void begin(String number, boolean implicit) {
      boolean numbered = number.matches("-?\\d{1,6}");
      int named = numbered ? Integer.parseInt(number) : implicit ? 0 : 1;
      double shorter = implicit ? Math.max(0, barLength - (reach - measureStart)) : 0;
      MusicXmlReader.this.bar = barLength;
      first = Optional.of(new TakeReader.Cue(0 - shorter, new PlayedBars.Bar(named, 0)));
    }

    private void attributes() throws XMLStreamException {
      while (enter()) {
        switch (xml.getLocalName()) {
          case "divisions" -> divisions = Math.max(1e-3, number(1));
          case "time" -> time();
          default -> skip();
        }
      }
    }

    private void time() throws XMLStreamException {
      double beats = 4;
      double type = 4;
      while (enter()) {
        switch (xml.getLocalName()) {
          case "beats" -> beats = number(4);
          case "beat-type" -> type = number(4);
          default -> skip();
        }
      }
      barLength = beats > 0 && type > 0 ? Math.min(64, 4 * beats / type) : 4;
    }

    private double duration() throws XMLStreamException {
      double duration = 0;
      while (enter()) {
        if (xml.getLocalName().equals("duration")) {
          duration = quarters();
        } else {
          skip();
        }
      }
      return duration;
    }

    private double quarters() throws XMLStreamException {
      return Math.max(0, Math.min(MOST_QUARTERS, number(0) / divisions));
    }

    private void direction() throws XMLStreamException {
      while (enter()) {
        if (xml.getLocalName().equals("sound")) {
          sound();
        } else {
          skip();
        }
      }
    }

    private void sound() throws XMLStreamException {
      double tempo = parsed(attribute("tempo"), 0);
      if (tells && tempo >= 1 && tempo <= FASTEST) {
        tempos.add(new TakeReader.TempoFrom(at, 60e6 / tempo));
      }
      skip();
    }

    private void note() throws XMLStreamException, IOException {
      WrittenTone tone = new WrittenTone();
      boolean chord = false;
      boolean grace = false;
      boolean tieStart = false;
      boolean tieStop = false;
      double duration = 0;
      while (enter()) {
        switch (xml.getLocalName()) {
          case "grace" -> {
            grace = true;
            skip();
          }
          case "chord" -> {
            chord = true;
            skip();
          }
          case "pitch" -> pitch(tone);
          case "duration" -> duration = quarters();
          case "tie" -> {
            tieStart |= attribute("type").equals("start");
            tieStop |= attribute("type").equals("stop");
            skip();
          }
          case "notations" -> notations(tone);
          default -> skip();
        }
      }
      if (grace) {
        return;
      }
      double onset = chord ? lastOnset : at;
      if (tone.sounds()) {
        add(tone, onset, duration, tieStart, tieStop);
      }
      lastOnset = onset;
      at = chord ? at : at + duration;
    }

    private void add(
        WrittenTone tone, double onset, double duration, boolean tieStart, boolean tieStop)
        throws IOException {
      WrittenTone open = tieStop ? tied.remove(tone.pitch()) : null;
      boolean goesOn = open != null && Math.abs(open.end() - onset) < 1e-6;
      WrittenTone sounding = goesOn ? open : tone;
      if (goesOn) {
        open.lengthen(duration);
      } else {
        tone.place(onset, duration);
        tones.add(tone);
      }
      if (tieStart) {
        tied.put(sounding.pitch(), sounding);
      }
      if (++count > MOST_NOTES) {
        throw new IOException(
            file + " is larger than any take: more than " + MOST_NOTES + " notes.");
      }
    }
  }

  private void pitch(WrittenTone tone) throws XMLStreamException {
    String step = "";
    double alter = 0;
    double octave = 4;
    while (enter()) {
      switch (xml.getLocalName()) {
        case "step" -> step = text();
        case "alter" -> alter = number(0);
        case "octave" -> octave = number(4);
        default -> skip();
      }
    }
    tone.sound(step, alter, octave);
  }

  private void notations(WrittenTone tone) throws XMLStreamException {
    while (enter()) {
      switch (xml.getLocalName()) {
        case "technical" -> technical(tone);
        case "slide", "glissando" -> {
          tone.reachedBy(attribute("type"), true);
          skip();
        }
        case "ornaments" -> {
          while (enter()) {
            tone.swing(xml.getLocalName());
            skip();
          }
        }
        default -> skip();
      }
    }
  }

  private void technical(WrittenTone tone) throws XMLStreamException {
    while (enter()) {
      switch (xml.getLocalName()) {
        case "string" -> tone.onString(number(0));
        case "hammer-on", "pull-off" -> {
          tone.reachedBy(attribute("type"), false);
          skip();
        }
        case "bend" -> bend(tone);
        default -> skip();
      }
    }
  }

  private void bend(WrittenTone tone) throws XMLStreamException {
    double alter = 0;
    boolean before = false;
    while (enter()) {
      switch (xml.getLocalName()) {
        case "bend-alter" -> alter = number(0);
        case "pre-bend" -> {
          before = true;
          skip();
        }
        default -> skip();
      }
    }
    tone.bend(alter, before);
  }

  // The stream

  /** Goes to the next element inside the one it stands in; at its end, out of it. */
  private boolean enter() throws XMLStreamException {
    while (xml.hasNext()) {
      int event = xml.next();
      if (event == XMLStreamConstants.START_ELEMENT) {
        if (++depth > DEEPEST) {
          throw new XMLStreamException("nested too deep", xml.getLocation());
        }
        return true;
      }
      if (event == XMLStreamConstants.END_ELEMENT) {
        depth--;
        return false;
      }
    }
    return false;
  }

  private void skip() throws XMLStreamException {
    int outside = depth - 1;
    while (depth > outside && xml.hasNext()) {
      enter();
    }
  }

  /** The text of the element it stands in, which is left. */
  private String text() throws XMLStreamException {
    StringBuilder text = new StringBuilder();
    int outside = depth - 1;
    while (depth > outside && xml.hasNext()) {
      int event = xml.next();
      if (event == XMLStreamConstants.CHARACTERS && text.length() < 1000) {
        text.append(xml.getText());
      } else if (event == XMLStreamConstants.START_ELEMENT) {
        depth++;
      } else if (event == XMLStreamConstants.END_ELEMENT) {
        depth--;
      }
    }
    return text.toString().strip();
  }

  private double number(double usual) throws XMLStreamException {
    return parsed(text(), usual);
  }

  private static double parsed(String text, double usual) {
    return text.matches("-?\\d{1,9}(\\.\\d{1,9})?") ? Double.parseDouble(text) : usual;
  }

  private String attribute(String name) {
    String value = xml.getAttributeValue(null, name);
    return value == null ? "" : value;
  }
}
