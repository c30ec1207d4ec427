package hingetone.hearing;

import hingetone.hearing.signal.EchoFilter;
import hingetone.hearing.signal.EchoFinder;
import hingetone.hearing.signal.Resampler;
import hingetone.neck.Fretboard;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Writes down a recording that comes in blocks, at any rate. */
public final class Transcriber {
  private final double rate;
  private final Resampler resampler;
  private final Optional<EchoFilter> echoes;
  private final Ear ear = new Ear();
  private final RecordingQuality impression = new RecordingQuality();
  private final List<HeardNote> notes = new ArrayList<>();
  private long samples;

  /**
   * @param rate samples a second that come in
   * @param echoes what undoes the recording's echoes, where an {@link EchoFinder} found some
   */
  public Transcriber(double rate, Optional<EchoFilter> echoes) {
    this.rate = rate;
    this.resampler = new Resampler(rate);
    this.echoes = echoes;
  }

  /** Takes more of the recording, one channel, −1 to 1. */
  public void take(float[] block) {
    samples += block.length;
    impression.samples(block);
    hear(resampler.next(block));
  }

  /** The recording written down, as played on a neck. */
  public Transcription finish(Fretboard neck) {
    hear(resampler.rest());
    notes.addAll(ear.rest(impression::frame));
    double seconds = samples / rate;
    return Transcription.of(seconds, notes, neck, impression.doubts(notes, seconds, rate));
  }

  private void hear(float[] block) {
    float[] clean = echoes.map(filter -> filter.next(block)).orElse(block);
    notes.addAll(ear.hear(clean, impression::frame));
  }
}
