package hingetone.handout;

import hingetone.text.Printable;
import java.io.StringWriter;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/** Writes XML, one element a line, indented. What passes the gate for texts is allowed in it. */
final class Xml {
  private final StringWriter text = new StringWriter();
  private final XMLStreamWriter out;
  private int depth;

  /** Something that fills a line. */
  private interface Content {
    void write() throws XMLStreamException;
  }

  /**
   * A document of XML 1.0 in UTF-8.
   *
   * @param type its document type declaration
   */
  Xml(String type) {
    try {
      out = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(text);
    } catch (XMLStreamException e) {
      throw impossible(e);
    }
    line(() -> out.writeStartDocument("UTF-8", "1.0"));
    line(() -> out.writeDTD(type));
  }

  /** Opens an element; attributes are names and values by turns. */
  Xml open(String name, String... attributes) {
    line(
        () -> {
          out.writeStartElement(name);
          write(attributes);
        });
    depth++;
    return this;
  }

  Xml close() {
    depth--;
    return line(out::writeEndElement);
  }

  /** An element without content. */
  Xml empty(String name, String... attributes) {
    return line(
        () -> {
          out.writeEmptyElement(name);
          write(attributes);
        });
  }

  /** An element that holds a text or a number. */
  Xml leaf(String name, Object content, String... attributes) {
    return line(
        () -> {
          out.writeStartElement(name);
          write(attributes);
          out.writeCharacters(Printable.line(content.toString()));
          out.writeEndElement();
        });
  }

  /** A remark for whoever reads the file. */
  Xml comment(String remark) {
    return line(() -> out.writeComment(" " + remark + " "));
  }

  private Xml line(Content content) {
    try {
      out.writeCharacters("  ".repeat(depth));
      content.write();
      out.writeCharacters("\n");
    } catch (XMLStreamException e) {
      throw impossible(e);
    }
    return this;
  }

  private void write(String... attributes) throws XMLStreamException {
    for (int i = 0; i < attributes.length; i += 2) {
      out.writeAttribute(attributes[i], Printable.line(attributes[i + 1]));
    }
  }

  private static IllegalStateException impossible(XMLStreamException e) {
    return new IllegalStateException("a text in memory takes everything", e);
  }

  @Override
  public String toString() {
    return text.toString();
  }
}
