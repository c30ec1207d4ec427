/**
 * What is handed out on paper or to other programs: notation and tab.
 *
 * <p>May import {@code print} and all that it may import; only commands use it.
 *
 * <pre>{@code
 * String xml = MusicXml.of(chart, plan, maker, 1);   // MusicXML 4.0, partwise
 * String tab = TabSheet.of(chart, plan, maker, 1);   // plain text
 * }</pre>
 */
package hingetone.handout;
