/**
 * From MIDI messages to sound: the synthesizer, the output line, the limiter.
 *
 * <p>May import theory, time, text, score, midi and sound.level. Sound is interleaved stereo in
 * {@code float}, full scale being 1; places are absolute frames of a stream.
 *
 * <pre>{@code
 * try (Synthesizer synthesizer = Synthesizer.open(44_100, SoundBank.builtIn())) {
 *   synthesizer.prepare(score.parts());
 *   synthesizer.send(message, 0);                // before the block that holds frame 0 is read
 *   float[] block = new float[2 * synthesizer.blockFrames()];
 *   synthesizer.read(block, synthesizer.blockFrames());
 * }
 * }</pre>
 */
package hingetone.sound;
