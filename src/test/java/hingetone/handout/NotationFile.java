package hingetone.handout;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.w3c.dom.ls.LSInput;
import org.xml.sax.InputSource;

/** Reads files of MusicXML and holds them against the schema. */
final class NotationFile {
  /** The schema of MusicXML 4.0 as it travels in org.audiveris:proxymusic 4.0.3. */
  private static final String SCHEMA = "/META-INF/jaxb/xsd/musicxml.xsd";

  private NotationFile() {}

  static List<Element> elements(Element parent, String name) {
    NodeList found = parent.getElementsByTagName(name);
    List<Element> elements = new ArrayList<>();
    for (int i = 0; i < found.getLength(); i++) {
      elements.add((Element) found.item(i));
    }
    return elements;
  }

  static String textOf(Element parent, String name) {
    return elements(parent, name).get(0).getTextContent();
  }

  static Document parsed(String text) throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
    return factory.newDocumentBuilder().parse(new InputSource(new StringReader(text)));
  }

  static void validate(Schema schema, String text) throws Exception {
    String undeclared = text.replaceFirst("<!DOCTYPE[^>]*>", "");
    schema.newValidator().validate(new StreamSource(new StringReader(undeclared)));
  }

  static Schema schema() throws Exception {
    SchemaFactory factory = SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI);
    factory.setResourceResolver(
        (type, namespace, publicId, systemId, base) ->
            systemId.endsWith("xml.xsd") && !systemId.endsWith("musicxml.xsd")
                ? stub(systemId, XML_STUB)
                : systemId.endsWith("xlink.xsd") ? stub(systemId, XLINK_STUB) : null);
    return factory.newSchema(new StreamSource(NotationFile.class.getResourceAsStream(SCHEMA)));
  }

  /** What the schema needs of two others that do not travel with it. */
  private static final String XML_STUB =
      """
      <xs:schema xmlns:xs="http://www.w3.org/2001/XMLSchema"
          targetNamespace="http://www.w3.org/XML/1998/namespace">
        <xs:attribute name="lang" type="xs:language"/>
        <xs:attribute name="space" type="xs:NCName"/>
      </xs:schema>
      """;

  private static final String XLINK_STUB =
      """
      <xs:schema xmlns:xs="http://www.w3.org/2001/XMLSchema"
          targetNamespace="http://www.w3.org/1999/xlink">
        <xs:attribute name="href" type="xs:anyURI"/>
        <xs:attribute name="type" type="xs:NMTOKEN"/>
        <xs:attribute name="role" type="xs:token"/>
        <xs:attribute name="title" type="xs:token"/>
        <xs:attribute name="show" type="xs:NMTOKEN"/>
        <xs:attribute name="actuate" type="xs:NMTOKEN"/>
      </xs:schema>
      """;

  private static LSInput stub(String systemId, String text) {
    return (LSInput)
        java.lang.reflect.Proxy.newProxyInstance(
            NotationFile.class.getClassLoader(),
            new Class<?>[] {LSInput.class},
            (proxy, method, arguments) ->
                switch (method.getName()) {
                  case "getStringData" -> text;
                  case "getSystemId" -> systemId;
                  case "getCertifiedText" -> false;
                  default -> null;
                });
  }
}
