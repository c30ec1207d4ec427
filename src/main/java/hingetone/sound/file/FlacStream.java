package hingetone.sound.file;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import org.jflac.FLACDecoder;
import org.jflac.frame.Frame;
import org.jflac.metadata.StreamInfo;
import org.jflac.util.ByteData;

/** The samples of a FLAC file (RFC 9639), as little-endian integers one after the other. */
final class FlacStream extends InputStream {
  private final InputStream file;
  private final FLACDecoder decoder;
  private final StreamInfo info;
  private ByteData block = new ByteData(0);
  private int place;

  /**
   * Reads as far as the first sample.
   *
   * @throws IOException also where it is no FLAC file
   */
  FlacStream(InputStream file) throws IOException {
    this.file = file;
    decoder = new FLACDecoder(file);
    try {
      decoder.readMetadata();
    } catch (RuntimeException e) {
      throw new IOException("its header is broken", e);
    }
    info = decoder.getStreamInfo();
    if (info == null) {
      throw new IOException("it has no stream information");
    }
  }

  StreamInfo info() {
    return info;
  }

  @Override
  public int read() throws IOException {
    return more() ? block.getData()[place++] & 0xFF : -1;
  }

  @Override
  public int read(byte[] bytes, int from, int count) throws IOException {
    if (!more()) {
      return -1;
    }
    int some = Math.min(count, block.getLen() - place);
    System.arraycopy(block.getData(), place, bytes, from, some);
    place += some;
    return some;
  }

  private boolean more() throws IOException {
    while (place == block.getLen()) {
      Frame frame;
      try {
        frame = decoder.readNextFrame();
      } catch (EOFException e) {
        return false;
      } catch (RuntimeException e) {
        throw new IOException("it is broken", e);
      }
      if (frame == null) {
        return false;
      }
      block = decoder.decodeFrame(frame, null);
      place = 0;
    }
    return true;
  }

  @Override
  public void close() throws IOException {
    file.close();
  }
}
