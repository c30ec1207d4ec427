package hingetone.sound;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * A SoundFont 2 file of a few sine waves, small enough to be damaged in every place.
 *
 * <p>Layout after the SoundFont Technical Specification 2.04, chapters 4 to 8 (from memory).
 *
 * @param version the major version that the file states: 2, or 3 for compressed samples
 * @param sampleType 1 for mono; 0x10 marks a compressed sample
 * @param peak how far the waves go
 * @param loop the first frame of their loop, and the frame after its last
 * @param sampleRate frames a second
 */
public record TinySoundFont(
    List<Zone> zones, int version, int sampleType, int peak, int[] loop, int sampleRate) {
  private static final int FRAMES = 2205;
  private static final int PERIOD = 49;
  private static final int[] LOOP = {PERIOD, 44 * PERIOD};
  private static final int SAMPLE_RATE = 22_050;
  private static final int GUARD = 46;

  /**
   * A preset with one zone.
   *
   * @param bank 0, or 128 for a drum kit
   * @param keys the lowest and the highest key
   * @param velocities the least and the greatest velocity
   */
  public record Zone(int bank, int program, int[] keys, int[] velocities) {
    public static Zone of(int bank, int program) {
      return new Zone(bank, program, new int[] {0, 127}, new int[] {0, 127});
    }

    Zone keys(int low, int high) {
      return new Zone(bank, program, new int[] {low, high}, velocities);
    }

    Zone velocities(int low, int high) {
      return new Zone(bank, program, keys, new int[] {low, high});
    }
  }

  public static TinySoundFont of(Zone... zones) {
    return new TinySoundFont(List.of(zones), 2, 1, 16_000, LOOP, SAMPLE_RATE);
  }

  TinySoundFont version(int major) {
    return new TinySoundFont(zones, major, sampleType, peak, loop, sampleRate);
  }

  TinySoundFont sampleType(int type) {
    return new TinySoundFont(zones, version, type, peak, loop, sampleRate);
  }

  TinySoundFont peak(int highest) {
    return new TinySoundFont(zones, version, sampleType, highest, loop, sampleRate);
  }

  TinySoundFont loop(int first, int end) {
    return new TinySoundFont(zones, version, sampleType, peak, new int[] {first, end}, sampleRate);
  }

  TinySoundFont sampleRate(int rate) {
    return new TinySoundFont(zones, version, sampleType, peak, loop, rate);
  }

  public byte[] bytes() {
    return chunk(
        "RIFF",
        ascii("sfbk"),
        list("INFO", chunk("ifil", shorts(version, 1)), chunk("INAM", ascii("Tiny"))),
        list("sdta", chunk("smpl", wave())),
        list(
            "pdta",
            phdr(),
            pbag(),
            mod("pmod"),
            pgen(),
            inst(),
            ibag(),
            mod("imod"),
            igen(),
            shdr()));
  }

  private byte[] phdr() {
    List<byte[]> records = new ArrayList<>();
    for (int i = 0; i < zones.size(); i++) {
      records.add(preset(zones.get(i).program, zones.get(i).bank, i));
    }
    records.add(preset(0, 0, zones.size()));
    return chunk("phdr", records.toArray(byte[][]::new));
  }

  private static byte[] preset(int program, int bank, int bag) {
    return join(new byte[20], shorts(program, bank, bag), new byte[12]);
  }

  /** One zone a preset: one generator, its instrument. */
  private byte[] pbag() {
    return bags("pbag", 1);
  }

  private byte[] pgen() {
    List<byte[]> records = new ArrayList<>();
    for (int i = 0; i < zones.size(); i++) {
      records.add(shorts(41, i));
    }
    records.add(shorts(0, 0));
    return chunk("pgen", records.toArray(byte[][]::new));
  }

  private byte[] inst() {
    List<byte[]> records = new ArrayList<>();
    for (int i = 0; i <= zones.size(); i++) {
      records.add(join(new byte[20], shorts(i)));
    }
    return chunk("inst", records.toArray(byte[][]::new));
  }

  /** One zone an instrument: keys, velocities, loop, sample. */
  private byte[] ibag() {
    return bags("ibag", 4);
  }

  private byte[] igen() {
    List<byte[]> records = new ArrayList<>();
    for (Zone zone : zones) {
      records.add(shorts(43, zone.keys[0] | zone.keys[1] << 8));
      records.add(shorts(44, zone.velocities[0] | zone.velocities[1] << 8));
      records.add(shorts(54, 1));
      records.add(shorts(53, 0));
    }
    records.add(shorts(0, 0));
    return chunk("igen", records.toArray(byte[][]::new));
  }

  private byte[] bags(String name, int generators) {
    List<byte[]> records = new ArrayList<>();
    for (int i = 0; i <= zones.size(); i++) {
      records.add(shorts(i * generators, 0));
    }
    return chunk(name, records.toArray(byte[][]::new));
  }

  private static byte[] mod(String name) {
    return chunk(name, new byte[10]);
  }

  private byte[] shdr() {
    byte[] places = ints(0, FRAMES, loop[0], loop[1], sampleRate);
    byte[] sample = join(new byte[20], places, new byte[] {69, 0}, shorts(0, sampleType));
    return chunk("shdr", sample, new byte[46]);
  }

  private byte[] wave() {
    int[] samples = new int[FRAMES + GUARD];
    for (int i = 0; i < FRAMES; i++) {
      samples[i] = (int) Math.round(peak * Math.sin(2 * Math.PI * i / PERIOD));
    }
    return shorts(samples);
  }

  private static byte[] list(String kind, byte[]... chunks) {
    return chunk("LIST", ascii(kind), join(chunks));
  }

  private static byte[] chunk(String name, byte[]... parts) {
    byte[] inside = join(parts);
    return join(ascii(name), ints(inside.length), inside, new byte[inside.length % 2]);
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }

  private static byte[] shorts(int... values) {
    ByteBuffer bytes = ByteBuffer.allocate(2 * values.length).order(ByteOrder.LITTLE_ENDIAN);
    for (int value : values) {
      bytes.putShort((short) value);
    }
    return bytes.array();
  }

  private static byte[] ints(int... values) {
    ByteBuffer bytes = ByteBuffer.allocate(4 * values.length).order(ByteOrder.LITTLE_ENDIAN);
    for (int value : values) {
      bytes.putInt(value);
    }
    return bytes.array();
  }

  private static byte[] join(byte[]... parts) {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    for (byte[] part : parts) {
      all.writeBytes(part);
    }
    return all.toByteArray();
  }
}
