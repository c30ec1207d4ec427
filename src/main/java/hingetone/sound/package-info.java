/**
 * From MIDI messages to sound: the synthesizer, the output line, the limiter, loudness and sound
 * files.
 *
 * <p>May import theory, time, text, score and midi. Sound is interleaved stereo in {@code float},
 * full scale being 1; places are absolute frames of a stream.
 *
 * <pre>{@code
 * try (Synthesizer synthesizer = Synthesizer.open(44_100, soundFont)) {
 *   synthesizer.prepare(score.parts());
 *   synthesizer.send(message, frame);       // before the block that holds the frame is read
 *   synthesizer.read(block, frames);
 * }
 * }</pre>
 */
package hingetone.sound;
