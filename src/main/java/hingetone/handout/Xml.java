package hingetone.handout;

import hingetone.text.Printable;
import java.util.ArrayDeque;
import java.util.Deque;

/** Writes XML, one element a line, indented. */
final class Xml {
  private final StringBuilder out = new StringBuilder();
  private final Deque<String> open = new ArrayDeque<>();

  Xml line(String text) {
    out.append(text).append('\n');
    return this;
  }

  /** Opens an element; attributes are names and values by turns. */
  Xml open(String name, String... attributes) {
    indent().append(tag(name, attributes)).append(">\n");
    open.push(name);
    return this;
  }

  Xml close() {
    String name = open.pop();
    indent().append("</").append(name).append(">\n");
    return this;
  }

  /** An element without content. */
  Xml empty(String name, String... attributes) {
    indent().append(tag(name, attributes)).append("/>\n");
    return this;
  }

  /** An element that holds a text or a number. */
  Xml leaf(String name, Object content, String... attributes) {
    indent()
        .append(tag(name, attributes))
        .append('>')
        .append(escaped(content.toString()))
        .append("</")
        .append(name)
        .append(">\n");
    return this;
  }

  private static String tag(String name, String... attributes) {
    StringBuilder tag = new StringBuilder("<").append(name);
    for (int i = 0; i < attributes.length; i += 2) {
      tag.append(' ').append(attributes[i]).append("=\"");
      tag.append(escaped(attributes[i + 1])).append('"');
    }
    return tag.toString();
  }

  /** What passes the gate is allowed in XML 1.0 (its production 2). */
  private static String escaped(String text) {
    return Printable.line(text)
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }

  private StringBuilder indent() {
    return out.append("  ".repeat(open.size()));
  }

  @Override
  public String toString() {
    return out.toString();
  }
}
