/**
 * Sound files: a score mixed down, made as loud as it should be, written; recordings read.
 *
 * <p>May import the base packages, midi and sound. Sound is interleaved stereo in {@code float},
 * full scale being 1.
 *
 * <pre>{@code
 * LoudnessMeter meter = new LoudnessMeter(44_100);
 * meter.add(new float[88_200], 44_100);      // a second of silence
 * meter.integrated();                        // → -Infinity
 * }</pre>
 */
package hingetone.sound.file;
