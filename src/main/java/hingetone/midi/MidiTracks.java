package hingetone.midi;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The tracks of a Standard MIDI File, read event by event (Standard MIDI Files 1.0, RP-001).
 *
 * <p>A file is taken as it is or refused with a sentence: nothing is reserved because a header
 * claims it, and no length is believed that the file does not have.
 *
 * @param quarter ticks in a quarter note
 * @param tracks the tracks, in order
 */
public record MidiTracks(int quarter, List<Track> tracks) {
  /** The largest file that is read, in bytes. */
  public static final int MOST_BYTES = 8 << 20;

  /** The most events that are read. */
  private static final int MOST_EVENTS = 1_000_000;

  private static final int HEADER = 14;
  private static final int CHUNK_HEAD = 8;
  private static final int SYSTEM_EXCLUSIVE = 0xF0;
  private static final int SYSTEM_CONTINUED = 0xF7;
  private static final int META = 0xFF;
  private static final int END_OF_TRACK = 0x2F;

  /**
   * A track.
   *
   * @param messages its channel messages, in order, ticks in the place of nanoseconds
   * @param texts its meta events but the end of track
   * @param ticks where it ends
   */
  public record Track(List<Received> messages, List<Meta> texts, long ticks) {
    public Track {
      messages = List.copyOf(messages);
      texts = List.copyOf(texts);
    }
  }

  /** A meta event: its type and what it holds. */
  public record Meta(long tick, int type, byte[] data) {
    /** What it holds as a text. */
    public String text() {
      return new String(data, StandardCharsets.UTF_8);
    }
  }

  public MidiTracks {
    tracks = List.copyOf(tracks);
  }

  /** The longest of the tracks, in ticks. */
  public long ticks() {
    return tracks.stream().mapToLong(Track::ticks).max().orElse(0);
  }

  /**
   * Reads a file.
   *
   * @throws IOException with a sentence for people where it is none, or broken
   */
  public static MidiTracks read(Path file) throws IOException {
    if (Files.size(file) > MOST_BYTES) {
      throw new IOException(file + " is larger than any take: more than 8 MB.");
    }
    try {
      return new Reader(Files.readAllBytes(file)).tracks();
    } catch (Broken e) {
      throw new IOException(file + " " + e.getMessage(), e);
    }
  }

  /** Why a file cannot be read, a sentence without its subject. */
  private static final class Broken extends Exception {
    private static final long serialVersionUID = 1;

    Broken(String message) {
      super(message);
    }
  }

  /** Goes through the bytes of a file. */
  private static final class Reader {
    private final byte[] bytes;
    private final List<Track> tracks = new ArrayList<>();
    private int at;
    private int end;
    private int events;

    Reader(byte[] bytes) {
      this.bytes = bytes;
    }

    MidiTracks tracks() throws Broken {
      if (bytes.length == 0) {
        throw new Broken("is empty.");
      }
      if (bytes.length < HEADER || !isChunk(0, "MThd") || number(4, 4) < 6) {
        throw new Broken("is no MIDI file.");
      }
      long format = number(8, 2);
      if (format > 1) {
        throw new Broken(
            "is a MIDI file of format " + format + ", whose tracks do not go together.");
      }
      int division = (int) number(12, 2);
      if (division >= 0x8000) {
        throw new Broken("counts in frames of film, not in quarter notes.");
      }
      if (division == 0) {
        throw new Broken("has no ticks in a quarter note.");
      }
      long next = CHUNK_HEAD + number(4, 4);
      while (next + CHUNK_HEAD <= bytes.length) {
        long length = number((int) next + 4, 4);
        if (next + CHUNK_HEAD + length > bytes.length) {
          throw new Broken("breaks off in its track " + (tracks.size() + 1) + ".");
        }
        if (isChunk((int) next, "MTrk")) {
          at = (int) next + CHUNK_HEAD;
          end = at + (int) length;
          tracks.add(track());
        }
        next += CHUNK_HEAD + length;
      }
      if (tracks.isEmpty()) {
        throw new Broken("has no tracks.");
      }
      return new MidiTracks(division, tracks);
    }

    private boolean isChunk(int place, String name) {
      byte[] wanted = name.getBytes(StandardCharsets.US_ASCII);
      return Arrays.equals(bytes, place, place + 4, wanted, 0, 4);
    }

    private long number(int place, int count) {
      long value = 0;
      for (int i = 0; i < count; i++) {
        value = value << 8 | bytes[place + i] & 0xFF;
      }
      return value;
    }

    private Track track() throws Broken {
      List<Received> messages = new ArrayList<>();
      List<Meta> texts = new ArrayList<>();
      long tick = 0;
      int running = 0;
      while (at < end) {
        tick += variable();
        if (++events > MOST_EVENTS) {
          throw new Broken("is larger than any take: more than " + MOST_EVENTS + " events.");
        }
        int status = next();
        if (status == META) {
          int type = next();
          byte[] data = data();
          if (type == END_OF_TRACK) {
            break;
          }
          texts.add(new Meta(tick, type, data));
        } else if (status == SYSTEM_EXCLUSIVE || status == SYSTEM_CONTINUED) {
          data();
        } else if (status > SYSTEM_EXCLUSIVE) {
          throw broken();
        } else {
          if (status < 0x80) {
            at--;
          } else {
            running = status;
          }
          messages.add(message(tick, running));
        }
      }
      return new Track(messages, texts, tick);
    }

    /** A channel message; program change and channel pressure have one byte, all others two. */
    private Received message(long tick, int status) throws Broken {
      if (status == 0) {
        throw broken();
      }
      int first = value();
      boolean hasOne = status >= 0xC0 && status < 0xE0;
      int second = hasOne ? 0 : value();
      return new Received(tick, status & 0xF0, status & 0x0F, first, second);
    }

    private int next() throws Broken {
      if (at >= end) {
        throw broken();
      }
      return bytes[at++] & 0xFF;
    }

    private int value() throws Broken {
      int value = next();
      if (value > 0x7F) {
        throw broken();
      }
      return value;
    }

    /** A number of at most four bytes, seven bits each. */
    private long variable() throws Broken {
      long value = 0;
      for (int i = 0; i < 4; i++) {
        int part = next();
        value = value << 7 | part & 0x7F;
        if (part < 0x80) {
          return value;
        }
      }
      throw broken();
    }

    private byte[] data() throws Broken {
      long length = variable();
      if (length > end - at) {
        throw broken();
      }
      byte[] data = Arrays.copyOfRange(bytes, at, at + (int) length);
      at += (int) length;
      return data;
    }

    private Broken broken() {
      return new Broken(
          "is damaged: its track " + (tracks.size() + 1) + " holds what is no MIDI event.");
    }
  }
}
