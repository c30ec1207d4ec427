package hingetone.take;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import hingetone.hearing.Technique;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Elements as in the MusicXML 4.0 reference (W3C Community Group Final Report). */
class MusicXmlReaderTest {
  @TempDir Path folder;

  private TakeReader read(String text) throws IOException {
    return MusicXmlReader.read(
        Files.writeString(folder.resolve("file.musicxml"), text), LineWanted.ANY);
  }

  private static String score(String measures) {
    return "<score-partwise version='4.0'><part-list><score-part id='P1'><part-name>Solo</part-name>"
        + "</score-part></part-list><part id='P1'>"
        + measures
        + "</part></score-partwise>";
  }

  private static String note(String step, int duration, String more) {
    return "<note><pitch><step>"
        + step
        + "</step><octave>4</octave></pitch><duration>"
        + duration
        + "</duration>"
        + more
        + "</note>";
  }

  private static String technical(String signs) {
    return "<notations><technical>" + signs + "</technical></notations>";
  }

  @Test
  void pitches_lengths_ties_chords_and_backups_are_read() throws IOException {
    TakeReader take =
        read(
            score(
                "<measure number='1'><attributes><divisions>2</divisions></attributes>"
                    + "<direction><sound tempo='90'/></direction>"
                    + note("C", 2, "<tie type='start'/>")
                    + note("C", 1, "<tie type='stop'/>")
                    + "<note><rest/><duration>1</duration></note>"
                    + note("E", 4, "")
                    + "<note><chord/><pitch><step>G</step><alter>1</alter><octave>4</octave></pitch>"
                    + "<duration>4</duration></note><backup><duration>4</duration></backup>"
                    + note("B", 2, "")
                    + "</measure>"));
    assertThat(take.notes()).extracting(PlacedNote::pitch).containsExactly(60, 64, 68, 71);
    assertThat(take.notes()).extracting(PlacedNote::at).containsExactly(0.0, 2.0, 2.0, 2.0);
    assertThat(take.notes().get(0).length()).isEqualTo(1.5);
    assertThat(take.cues()).containsExactly(new TakeReader.Cue(0, new PlayedBars.Bar(1, 0)));
    assertThat(take.secondsAt(3)).isCloseTo(2, within(1e-9));
  }

  @Test
  void a_bar_before_the_first_that_is_shorter_is_a_pickup() throws IOException {
    TakeReader take =
        read(
            score(
                "<measure number='0' implicit='yes'><attributes><divisions>2</divisions>"
                    + "<time><beats>3</beats><beat-type>4</beat-type></time></attributes>"
                    + note("C", 2, "")
                    + "</measure><measure number='1'>"
                    + note("E", 6, "")
                    + "</measure>"));
    assertThat(take.cues()).containsExactly(new TakeReader.Cue(-2, new PlayedBars.Bar(0, 0)));
    assertThat(take.notes()).extracting(PlacedNote::at).containsExactly(0.0, 1.0);
  }

  @Test
  void strings_bends_and_other_techniques_are_kept() throws IOException {
    String up = "<bend><bend-alter>2</bend-alter></bend>";
    String back = "<bend><bend-alter>-2</bend-alter><release/></bend>";
    String before = "<bend><bend-alter>2</bend-alter><pre-bend/></bend>";
    TakeReader take =
        read(
            score(
                "<measure number='1'><attributes><divisions>1</divisions></attributes>"
                    + note("D", 1, technical("<string>3</string><fret>7</fret>" + up))
                    + note("D", 1, technical(up + back))
                    + note("D", 1, technical(before + back))
                    + note("D", 1, technical("<bend><bend-alter>0.5</bend-alter></bend>"))
                    + note("E", 1, technical("<hammer-on type='stop'/>"))
                    + note("E", 1, "<notations><slide type='stop'/></notations>")
                    + note(
                        "E",
                        1,
                        "<notations><ornaments><wavy-line type='start'/></ornaments></notations>")
                    + "</measure>"));
    assertThat(take.notes())
        .extracting(n -> n.handling().technique())
        .containsExactly(
            Technique.BEND,
            Technique.RELEASE,
            Technique.PREBEND,
            Technique.CURL,
            Technique.LEGATO,
            Technique.SLIDE,
            Technique.PLAIN);
    assertThat(take.notes()).extracting(PlacedNote::fretted).containsOnly(62, 64);
    assertThat(take.notes().get(0).reached()).isEqualTo(64);
    assertThat(take.notes().get(2).struck()).isEqualTo(64);
    assertThat(take.notes().get(0).handling().string()).isEqualTo(Optional.of(3));
    assertThat(take.notes().get(6).handling().vibrato()).isTrue();
  }

  @Test
  void hostile_and_broken_files_are_refused_with_a_sentence() {
    String bomb =
        "<!DOCTYPE s [<!ENTITY a 'aaaaaaaaaa'><!ENTITY b '&a;&a;&a;&a;&a;&a;&a;&a;'>"
            + "<!ENTITY c '&b;&b;&b;&b;&b;&b;&b;&b;'>]><score-partwise>&c;</score-partwise>";
    String outside =
        "<!DOCTYPE s [<!ENTITY a SYSTEM 'file:///etc/hostname'>]>"
            + score("<measure number='1'>&a;</measure>");
    String deep = "<score-partwise>" + "<a>".repeat(100_000);
    for (String text :
        List.of("", "no file", "<html/>", "<score-timewise/>", deep, "<score-partwise>")) {
      assertThatThrownBy(() -> read(text))
          .isInstanceOf(IOException.class)
          .hasMessageContaining("file.musicxml ");
    }
    for (String text : List.of(bomb, outside)) {
      try {
        assertThat(read(text).notes()).isEmpty();
      } catch (IOException e) {
        assertThat(e).hasMessageContaining("file.musicxml is no MusicXML file");
      }
    }
  }
}
