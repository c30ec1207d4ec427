package hingetone.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import hingetone.sound.file.WavFile;
import hingetone.text.OddFiles;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TranscribeCommandTest extends ProgramRun {
  private static final int RATE = 44_100;
  private static final int[] LINE = {55, 58, 60, 62, 65, 67};

  @TempDir Path folder;

  @Test
  void json_tells_each_note_with_all_its_keys() throws IOException {
    assertThat(run("transcribe", line(0).toString(), "--json")).isZero();
    assertThat(err.toString()).as("doubts about a plain line").isEmpty();
    JsonNode answer = new ObjectMapper().readTree(out.toString());
    assertThat(answer.get("version").asInt()).isEqualTo(1);
    assertThat(answer.get("notes")).hasSize(LINE.length);
    JsonNode first = answer.get("notes").get(0);
    List<String> keys = new ArrayList<>();
    first.fieldNames().forEachRemaining(keys::add);
    assertThat(keys)
        .containsExactly(
            "at",
            "end",
            "note",
            "struck",
            "reached",
            "technique",
            "vibrato",
            "string",
            "fret",
            "confidence",
            "position");
    assertThat(first.get("note").asText()).isEqualTo("G3");
    assertThat(first.get("reached").asDouble()).isCloseTo(55, within(0.1));
  }

  @Test
  void a_guitar_tuned_off_is_written_in_its_own_tuning() throws IOException {
    assertThat(run("transcribe", line(0.3).toString(), "--json")).isZero();
    JsonNode answer = new ObjectMapper().readTree(out.toString());
    assertThat(answer.get("tuningCents").asDouble()).isCloseTo(30, within(3.0));
    for (int i = 0; i < LINE.length; i++) {
      double reached = answer.get("notes").get(i).get("reached").asDouble();
      assertThat(reached).isCloseTo(LINE[i], within(0.06));
    }
  }

  @Test
  void a_midi_file_states_its_bend_range_and_has_the_notes() throws Exception {
    Path file = folder.resolve("line.mid");
    assertThat(run("transcribe", line(0).toString(), "-o", file.toString())).isZero();
    assertThat(out.toString()).contains("6 notes in 2.8 s");
    Sequence sequence = MidiSystem.getSequence(file.toFile());
    List<Integer> keys = new ArrayList<>();
    List<String> controls = new ArrayList<>();
    Track line = sequence.getTracks()[1];
    for (int i = 0; i < line.size(); i++) {
      if (line.get(i).getMessage() instanceof ShortMessage message) {
        if (message.getCommand() == ShortMessage.NOTE_ON) {
          keys.add(message.getData1());
        } else if (message.getCommand() == ShortMessage.CONTROL_CHANGE) {
          controls.add(message.getData1() + "=" + message.getData2());
        }
      }
    }
    assertThat(keys).containsExactly(55, 58, 60, 62, 65, 67);
    assertThat(controls).startsWith("101=0", "100=0", "6=12", "38=0");
  }

  @Test
  void what_is_not_ours_as_it_was_is_not_replaced_and_json_stays_json() throws Exception {
    String sound = line(0).toString();
    Path file = Files.writeString(folder.resolve("line.mid"), "my own line");
    assertThat(run("transcribe", sound, "-o", file.toString())).isEqualTo(2);
    assertThat(err.toString()).contains("hingetone did not write it");
    assertThat(file).hasContent("my own line");
    assertThat(run("transcribe", sound, "-o", file.toString(), "--force", "--json")).isZero();
    assertThat(new ObjectMapper().readTree(out.toString()).get("notes")).hasSize(LINE.length);
    assertThat(run("transcribe", sound, "-o", file.toString())).isZero();
    assertThat(out.toString()).endsWith("A = 440 Hz, in place of an earlier export\n");
    assertThat(run("transcribe", sound, "-o", sound, "--as", "txt", "--force")).isEqualTo(2);
    assertThat(run("transcribe", sound, "-o", "-", "--json", "--as", "mid")).isEqualTo(2);
  }

  @Test
  void a_pipe_is_not_waited_for() throws Exception {
    Path pipe = OddFiles.pipe(folder.resolve("pipe.wav"));
    assertThat(run("transcribe", pipe.toString(), "--json")).isEqualTo(2);
    assertThat(err.toString()).contains("is no file");
  }

  @Test
  void tab_has_frets_under_times() throws IOException {
    Path file = folder.resolve("line.txt");
    assertThat(run("transcribe", line(0).toString(), "-o", file.toString())).isZero();
    assertThat(Files.readString(file)).contains("begins", "lasts", "E4   |-", "h7 hammered on");
  }

  @Test
  void notation_without_a_chart_says_what_it_counts_in_and_with_one_is_in_its_bars()
      throws IOException {
    Path file = folder.resolve("line.musicxml");
    String sound = line(0).toString();
    assertThat(run("transcribe", sound, "-o", file.toString())).isZero();
    assertThat(out.toString())
        .contains("written in 4/4 at 120 quarter notes a minute, for there is no --chart");
    assertThat(Files.readString(file)).contains("<work-title>sound.wav<", "<per-minute>120<");
    Path chart =
        Files.writeString(
            folder.resolve("quay.yaml"),
            "title: Quay\ntempo: 150\ncapo: 3\nsections:\n  a:\n    key: G minor\n"
                + "    bars: |\n      | Gm7 | Cm7 |\n");
    String[] inBars = {"--chart", chart.toString(), "--offset", "0.2"};
    assertThat(
            run(
                "transcribe",
                sound,
                "-o",
                file.toString(),
                inBars[0],
                inBars[1],
                inBars[2],
                inBars[3]))
        .isZero();
    assertThat(out.toString()).contains("bar 1 at 0.20 s");
    assertThat(Files.readString(file))
        .contains("<fifths>-2<", "<per-minute>150<", "<capo>3<", "<root-step>G<");
  }

  @Test
  void with_a_chart_each_note_has_its_place() throws IOException {
    Path chart =
        Files.writeString(
            folder.resolve("quay.yaml"),
            "title: Quay\ntempo: 150\ncount-in: 0\nsections:\n  a:\n    key: G minor\n"
                + "    bars: |\n      | Gm7 | Cm7 |\n");
    String sound = line(0).toString();
    assertThat(run("transcribe", sound, "--json", "--chart", chart.toString(), "--offset", "0.2"))
        .isZero();
    JsonNode notes = new ObjectMapper().readTree(out.toString()).get("notes");
    assertThat(notes.get(0).get("position").toString()).isEqualTo("{\"bar\":1,\"beat\":\"1\"}");
    assertThat(notes.get(5).get("position").toString()).isEqualTo("{\"bar\":2,\"beat\":\"2\"}");
    assertThat(notes.get(1).get("note").asText()).isEqualTo("Bb3");
    assertThat(run("transcribe", sound, "--json", "--chart", chart.toString())).isEqualTo(2);
    assertThat(err.toString()).contains("it has 6 notes, and I need 8").contains("--offset 2.35");
  }

  @Test
  void silence_is_written_down_as_no_notes_with_a_warning() throws IOException {
    assertThat(run("transcribe", wav(new float[2 * RATE]).toString(), "--json")).isZero();
    assertThat(err.toString()).contains("is it silent?");
    assertThat(out.toString()).contains("\"notes\" : [ ]".replace(" :", ":"));
  }

  @Test
  void noise_is_never_written_down_without_a_warning() throws IOException {
    Random random = new Random(2);
    float[] noise = new float[4 * RATE];
    for (int i = 0; i < noise.length; i++) {
      noise[i] = (float) (0.1 * random.nextGaussian());
    }
    assertThat(run("transcribe", wav(noise).toString(), "--json")).isZero();
    assertThat(err.toString()).contains("no notes");
  }

  /** Open and barre shapes, from the lowest string up: E, A minor, D7, G, B flat, C sharp minor. */
  @Test
  void strummed_chords_are_never_written_down_without_a_warning() throws IOException {
    int[][] chords = {
      {40, 47, 52, 56, 59, 64},
      {45, 52, 57, 60, 64},
      {50, 57, 60, 66},
      {43, 47, 50, 55, 59, 67},
      {46, 53, 58, 62, 65},
      {49, 56, 61, 64}
    };
    for (double beat : new double[] {0.35, 0.8}) {
      err.getBuffer().setLength(0);
      assertThat(run("transcribe", wav(strummed(chords, beat)).toString(), "--json")).isZero();
      assertThat(err.toString()).as("a chord in %s s", beat).contains("chords or a band");
    }
  }

  @Test
  void clipping_is_told() throws IOException {
    float[] line = samples(0);
    for (int i = 0; i < line.length; i++) {
      line[i] = Math.max(-0.9f, Math.min(0.9f, 12 * line[i]));
    }
    assertThat(run("transcribe", wav(line).toString(), "--json")).isZero();
    assertThat(err.toString()).contains("clipped");
  }

  @Test
  void clipping_is_told_of_a_sound_turned_down_and_not_of_one_in_few_steps() throws IOException {
    float[] line = samples(0);
    float[] cut = line.clone();
    float[] stepped = line.clone();
    for (int i = 0; i < line.length; i++) {
      cut[i] = 0.3f * Math.max(-0.9f, Math.min(0.9f, 12 * line[i]));
      stepped[i] = Math.round(line[i] * 127) / 127f;
    }
    assertThat(run("transcribe", wav(cut).toString(), "--json")).isZero();
    assertThat(err.toString()).contains("clipped");
    err.getBuffer().setLength(0);
    assertThat(run("transcribe", wav(stepped).toString(), "--json")).isZero();
    assertThat(err.toString()).isEmpty();
  }

  @Test
  void what_is_too_short_or_breaks_off_or_has_too_few_samples_is_told() throws IOException {
    assertThat(run("transcribe", wav(new float[0]).toString(), "--json")).isZero();
    assertThat(err.toString()).contains("lasts 0.00 s: that is too short for a note");
    byte[] whole = Files.readAllBytes(line(0));
    Path half = folder.resolve("half.wav");
    Files.write(half, Arrays.copyOf(whole, whole.length / 2));
    err.getBuffer().setLength(0);
    assertThat(run("transcribe", half.toString(), "--json")).isZero();
    assertThat(err.toString()).contains("breaks off after 1.4 s, though its header says 2.8 s");
    ByteBuffer header = ByteBuffer.wrap(whole).order(ByteOrder.LITTLE_ENDIAN);
    header.putInt(24, 4000); // the rate, by the WAVE format's layout
    Path slow = Files.write(folder.resolve("slow.wav"), whole);
    err.getBuffer().setLength(0);
    assertThat(run("transcribe", slow.toString(), "--json")).isZero();
    assertThat(err.toString()).contains("4000 samples a second are too few");
  }

  @Test
  void wrong_use_says_what_to_do() throws IOException {
    String sound = line(0).toString();
    assertThat(run("transcribe", sound)).isEqualTo(2);
    assertThat(err.toString()).contains("-o FILE");
    assertThat(run("transcribe", sound, "-o", "line.midi")).isEqualTo(2);
    assertThat(err.toString()).contains("Did you mean .mid?");
    assertThat(run("transcribe", folder.resolve("none.wav").toString(), "--json")).isEqualTo(2);
    assertThat(err.toString()).contains("does not exist");
    assertThat(run("transcribe", sound, "--json", "--channel", "3")).isEqualTo(2);
    assertThat(err.toString()).contains("no channel 3");
  }

  private Path line(double sharp) throws IOException {
    return wav(samples(sharp));
  }

  /** Picked strings: harmonics that die away after the noise of the plectrum. */
  private static float[] samples(double sharp) {
    float[] sound = new float[(int) (RATE * (0.4 + 0.4 * LINE.length))];
    Random noise = new Random(1);
    for (int n = 0; n < LINE.length; n++) {
      double hertz = 440 * Math.pow(2, (LINE[n] + sharp - 69) / 12);
      int start = (int) (RATE * (0.2 + 0.4 * n));
      for (int i = 0; i < 0.4 * RATE; i++) {
        double t = (double) i / RATE;
        double sum = i < 300 ? 0.3 * noise.nextGaussian() : 0;
        for (int k = 1; k <= 10; k++) {
          sum += Math.sin(2 * Math.PI * k * hertz * t) / k * Math.exp(-1.5 * t * Math.sqrt(k));
        }
        double fade = Math.min(1, Math.min(i, 0.4 * RATE - i) / 100);
        sound[start + i] = (float) (0.25 * fade * sum);
      }
    }
    return sound;
  }

  /**
   * Each chord struck downwards twice, its strings 12 ms apart. The strings are those of Karplus
   * and Strong (Computer Music Journal 7, 1983): noise that goes round and is averaged.
   */
  private static float[] strummed(int[][] chords, double seconds) {
    int beat = (int) (RATE * seconds);
    float[] sound = new float[2 * beat * chords.length];
    Random noise = new Random(3);
    for (int stroke = 0; stroke < 2 * chords.length; stroke++) {
      int[] chord = chords[stroke / 2];
      for (int i = 0; i < chord.length; i++) {
        pluck(sound, stroke * beat + i * RATE * 12 / 1000, (stroke + 1) * beat, chord[i], noise);
      }
    }
    return sound;
  }

  private static void pluck(float[] sound, int from, int to, int key, Random noise) {
    double period = RATE / (440 * Math.pow(2, (key - 69) / 12.0));
    float[] string = new float[(int) Math.round(period - 0.5)];
    for (int i = 0; i < string.length; i++) {
      string[i] = noise.nextBoolean() ? 0.15f : -0.15f;
    }
    float before = 0;
    for (int i = from; i < to; i++) {
      int at = (i - from) % string.length;
      float out = string[at];
      sound[i] += out * Math.min(1, (to - i) / 400f);
      string[at] = 0.5f * (out + before);
      before = out;
    }
  }

  private Path wav(float[] mono) throws IOException {
    Path file = folder.resolve("sound.wav");
    float[] stereo = new float[2 * mono.length];
    for (int i = 0; i < mono.length; i++) {
      stereo[2 * i] = mono[i];
      stereo[2 * i + 1] = mono[i];
    }
    try (WavFile wav = new WavFile(file, RATE, WavFile.Samples.SHORT)) {
      wav.write(stereo, mono.length);
    }
    return file;
  }
}
