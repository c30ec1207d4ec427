/**
 * Sound files: a score mixed down, made as loud as it should be, written; recordings read.
 *
 * <p>May import the base packages, midi and sound. Sound is interleaved stereo in {@code float},
 * full scale being 1.
 *
 * <pre>{@code
 * LoudnessMeter meter = new LoudnessMeter(44_100);
 * meter.add(block, frames);
 * meter.integrated();                   // LUFS
 * }</pre>
 */
package hingetone.sound.file;
