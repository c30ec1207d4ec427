package hingetone.reviewing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hingetone.midi.BentLine;
import hingetone.output.CommandFailure;
import hingetone.review.Evening;
import hingetone.review.Review;
import hingetone.review.ReviewedPhrase;
import hingetone.score.Mark;
import hingetone.score.Score;
import hingetone.sound.SoundBank;
import hingetone.sound.file.WavFile;
import hingetone.take.LineWanted;
import hingetone.take.PlacedNote;
import hingetone.time.Beats;
import hingetone.time.Position;
import hingetone.time.Tempo;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The take beside the tests, at 120 quarters a minute, as if it came from elsewhere. */
class ForeignTakeTest {
  private static final double LATE = 1.7;
  private static final int OTHER_TEMPO = 97;
  private static final int RATE = 22_050;

  @TempDir Path folder;
  private final List<String> told = new ArrayList<>();

  private Review review(Path file, Optional<Double> offset) throws IOException {
    ForeignTake take = new ForeignTake(file, Evening.chart(), LineWanted.ANY, offset, told::add);
    return Review.of(take.read(done -> {}).played(), Evening.chart());
  }

  /** Notes that begin so many seconds into a file whose tempo is another. */
  private Path midi(List<Double> starts) throws IOException {
    List<BentLine.Note> notes = new ArrayList<>();
    List<PlacedNote> played = Evening.played().notes();
    for (int i = 0; i < played.size(); i++) {
      double at = starts.get(i) * OTHER_TEMPO / 60;
      double length = played.get(i).length() / 2 * OTHER_TEMPO / 60;
      notes.add(new BentLine.Note(at, at + length, 0, played.get(i).pitch(), 90, List.of()));
    }
    List<Mark> tempo = List.of(new Mark.OfTempo(Beats.ZERO, Tempo.of(OTHER_TEMPO)));
    Path file = folder.resolve("elsewhere.mid");
    try (OutputStream out = Files.newOutputStream(file)) {
      BentLine.write(new Score("", Beats.ZERO, Beats.ZERO, tempo, List.of()), notes, out);
    }
    return file;
  }

  private static List<Double> starts() throws IOException {
    Random hand = new Random(2);
    return Evening.played().notes().stream()
        .map(n -> n.at() / 2 + LATE + 0.008 * hand.nextGaussian())
        .toList();
  }

  @Test
  void a_file_recorded_elsewhere_is_laid_into_the_bars_by_its_beat_and_its_keys()
      throws IOException {
    ReviewedPhrase first = review(midi(starts()), Optional.empty()).phrases().get(0);
    assertThat(first.start()).isEqualTo(Position.of(0, 4));
    assertThat(first.landing().orElseThrow().at()).isEqualTo(Position.of(1, 1));
    assertThat(told).containsExactly("Laid into the chart: bar 1 at 3.70 s, 100.0 % of its tempo.");
    ReviewedPhrase said = review(midi(starts()), Optional.of(LATE * 2)).phrases().get(0);
    assertThat(said.landing()).map(ReviewedPhrase.Landing::at).contains(Position.of(1, 1));
  }

  @Test
  void notes_on_no_beat_are_refused_with_the_reason() throws IOException {
    Random random = new Random(4);
    List<Double> anywhere = starts().stream().map(s -> s + random.nextDouble()).sorted().toList();
    Path file = midi(anywhere);
    assertThatThrownBy(() -> review(file, Optional.empty()))
        .isInstanceOf(CommandFailure.class)
        .hasMessageContaining("keep to no beat")
        .hasMessageContaining("--offset 2");
  }

  /** Plucked strings after Karplus and Strong (Computer Music Journal 7, 1983). */
  @Test
  void a_recording_is_written_down_and_reviewed_in_the_same_bars() throws Exception {
    List<PlacedNote> notes = Evening.played().notes();
    float[] sound = new float[(int) (RATE * (LATE + notes.get(notes.size() - 1).end() / 2 + 1))];
    Random noise = new Random(1);
    for (PlacedNote note : notes) {
      pluck(sound, note, noise);
    }
    float[] stereo = new float[2 * sound.length];
    for (int i = 0; i < stereo.length; i++) {
      stereo[i] = sound[i / 2];
    }
    Path file = folder.resolve("evening.wav");
    try (WavFile wav = new WavFile(file, RATE, WavFile.Samples.SHORT)) {
      wav.write(stereo, sound.length);
    }
    ForeignTake take =
        new ForeignTake(file, Evening.chart(), LineWanted.ANY, Optional.empty(), told::add);
    ReadTake read = take.read(done -> {});
    Review heard = Review.of(read.played(), Evening.chart());
    assertThat(heard.played().notes()).hasSizeBetween(notes.size() - 2, notes.size() + 2);
    assertThat(heard.phrases().get(0).landing())
        .map(ReviewedPhrase.Landing::at)
        .contains(Position.of(1, 1));
    SoundBank bank = SoundBank.builtIn();
    PhraseSound half =
        new PhraseSound(heard, read.recording(), Optional.empty(), 50, score -> bank);
    double seconds = half.of(1).length / 2.0 / RATE;
    PlacedNote first = notes.get(0);
    double played = (notes.get(5).end() - first.at()) / 2;
    assertThat(seconds).isBetween(2 * played, 2 * (played + 1));
  }

  private static void pluck(float[] sound, PlacedNote note, Random noise) {
    double period = RATE / (440 * Math.pow(2, (note.pitch() - 69) / 12.0));
    float[] string = new float[(int) Math.round(period - 0.5)];
    for (int i = 0; i < string.length; i++) {
      string[i] = noise.nextBoolean() ? 0.2f : -0.2f;
    }
    int from = (int) (RATE * (LATE + note.at() / 2));
    int to = (int) (RATE * (LATE + note.end() / 2));
    float before = 0;
    for (int i = from; i < to; i++) {
      int at = (i - from) % string.length;
      float out = string[at];
      sound[i] += out * Math.min(1, (to - i) / 400f);
      string[at] = 0.5f * (out + before);
      before = out;
    }
  }

  @Test
  void notation_in_other_bars_than_the_chart_is_refused() throws IOException {
    String waltz =
        "<score-partwise><part id='P1'><measure number='1'><attributes><divisions>1</divisions>"
            + "<time><beats>3</beats><beat-type>4</beat-type></time></attributes>"
            + "<note><pitch><step>C</step><octave>4</octave></pitch><duration>3</duration></note>"
            + "</measure></part></score-partwise>";
    Path file = Files.writeString(folder.resolve("waltz.musicxml"), waltz);
    assertThatThrownBy(() -> review(file, Optional.empty()))
        .isInstanceOf(CommandFailure.class)
        .hasMessageContaining("begins with bars of 3.0 quarter notes, the chart with bars of 4.0");
  }

  @Test
  void what_is_none_of_these_is_refused_by_its_name() throws IOException {
    String[][] others = {
      {"plain text here", "I know MIDI, MusicXML, WAV, AIFF and FLAC"},
      {"PK\u0003\u0004", "unpack the MusicXML file"},
      {"", "is empty"},
      {"RIFF", "its header is broken"}
    };
    for (String[] other : others) {
      Path file = Files.writeString(folder.resolve("other.bin"), other[0]);
      assertThatThrownBy(() -> review(file, Optional.empty()))
          .isInstanceOf(CommandFailure.class)
          .hasMessageContaining("other.bin")
          .hasMessageContaining(other[1]);
    }
  }
}
