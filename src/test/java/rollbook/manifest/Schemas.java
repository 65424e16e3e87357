package rollbook.manifest;

import java.io.ByteArrayInputStream;
import java.io.CharArrayReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import javax.xml.XMLConstants;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.SchemaFactory;
import javax.xml.validation.Validator;
import org.xml.sax.SAXException;

/** Validates what is written against the schemas, with the Java platform's validator. */
final class Schemas {
    private Schemas() {}

    static void validateHashList(byte[] content) throws SAXException, IOException {
        validate("/manifest/ascmhl-2.xsd", content);
    }

    static void validateChain(byte[] content) throws SAXException, IOException {
        validate("/manifest/ascmhl-directory-2.xsd", content);
    }

    private static void validate(String schemaName, byte[] content) throws SAXException, IOException {
        String schema = new String(Manifests.resource(schemaName), StandardCharsets.UTF_8);
        Validator validator = SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI)
                .newSchema(new StreamSource(new CharArrayReader(schema.toCharArray())))
                .newValidator();
        validator.validate(new StreamSource(new ByteArrayInputStream(content)));
    }
}
