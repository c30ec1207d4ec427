/**
 * How loud sound is: the meter, true peaks, and what makes the sounds of any bank as loud as the
 * levels of a band reckon with.
 *
 * <p>May import theory, time, text, score and midi; knows no synthesizer.
 *
 * <pre>{@code
 * Leveller leveller = new Leveller(() -> BankLevels.NONE);   // what is known of a bank by now
 * leveller.adapt(message).size();                            // → 2
 * }</pre>
 */
package hingetone.sound.level;
