package hingetone.phrase.maker;

import hingetone.chart.Form;
import hingetone.plan.Prompt;
import hingetone.time.Beats;

/**
 * The room of a prompt in quarter notes.
 *
 * @param landing when it lands, from the start of bar 1
 * @param before time before the landing
 * @param after time after it
 */
record PromptSpan(Beats landing, Beats before, Beats after) {
  static PromptSpan of(Form form, Prompt prompt) {
    Beats landing = form.quarters(prompt.landOn());
    return new PromptSpan(
        landing,
        landing.minus(form.quarters(prompt.speakFrom())),
        form.quarters(prompt.stopBy()).minus(landing));
  }
}
