package rollbook.manifest;

import com.fasterxml.aalto.stax.InputFactoryImpl;
import java.io.IOException;
import java.io.InputStream;
import java.util.Locale;
import javax.xml.stream.Location;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.codehaus.stax2.XMLInputFactory2;
import org.jspecify.annotations.Nullable;

/**
 * Moves over the elements of an untrusted XML document. Whatever is wrong with it becomes a {@link ManifestException}
 * with its place; declarations of types and entities are refused, depth and text are bounded.
 */
final class XmlCursor {
    private static final int MAX_DEPTH = 64;
    private static final int MAX_TEXT = 65_536;

    private final XmlInput input;
    private final XMLStreamReader reader;
    private int depth;

    XmlCursor(InputStream in) throws IOException, ManifestException {
        this.input = new XmlInput(in);
        this.reader = open(input);
        String encoding = reader.getCharacterEncodingScheme();
        if (encoding != null && !encoding.toUpperCase(Locale.ROOT).matches("UTF-?8|US-ASCII")) {
            throw new ManifestException(ManifestProblem.XML_ENCODING, 1, 1, encoding);
        }
    }

    /** True at the start of a further element, false at the end of the current one; text in between is refused. */
    boolean nextElement() throws IOException, ManifestException {
        while (true) {
            int event = next();
            switch (event) {
                case XMLStreamConstants.START_ELEMENT -> {
                    return true;
                }
                case XMLStreamConstants.END_ELEMENT, XMLStreamConstants.END_DOCUMENT -> {
                    return false;
                }
                case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA -> refuseText(textPiece());
                default -> {
                    // comments and processing instructions say nothing about files
                }
            }
        }
    }

    /** The text of the current element, white space kept, and moves to its end; elements inside are refused. */
    String text() throws IOException, ManifestException {
        String element = localName();
        String only = ""; // nearly always it comes in one piece
        StringBuilder pieces = null;
        for (int event = next(); event != XMLStreamConstants.END_ELEMENT; event = next()) {
            if (event == XMLStreamConstants.START_ELEMENT) {
                throw problem(ManifestProblem.MHL_UNKNOWN_ELEMENT, localName(), element);
            }
            if (isText(event) && pieces == null && only.isEmpty()) {
                only = textPiece();
            } else if (isText(event)) {
                pieces = pieces == null ? new StringBuilder(only) : pieces;
                pieces.append(textPiece());
            }
            if (Math.max(only.length(), pieces == null ? 0 : pieces.length()) > MAX_TEXT) {
                throw problem(ManifestProblem.XML_EXCESSIVE);
            }
        }
        return pieces == null ? only : pieces.toString();
    }

    /** Moves to the end of the current element, whatever it holds. */
    void skip() throws IOException, ManifestException {
        int outside = depth - 1;
        while (depth > outside) {
            next();
        }
    }

    String localName() {
        return reader.getLocalName();
    }

    String namespace() {
        String namespace = reader.getNamespaceURI();
        return namespace == null ? "" : namespace;
    }

    @Nullable
    String attribute(String name) {
        return reader.getAttributeValue(null, name);
    }

    /** Line where the current element starts. */
    long line() {
        return Math.max(1, reader.getLocation().getLineNumber());
    }

    int column() {
        return Math.max(1, reader.getLocation().getColumnNumber());
    }

    ManifestException problem(ManifestProblem problem, Object... arguments) {
        return new ManifestException(problem, line(), column(), arguments);
    }

    private static XMLStreamReader open(XmlInput input) throws IOException, ManifestException {
        // A factory of its own: factories share a table of names, which hostile documents could fill.
        InputFactoryImpl factory = new InputFactoryImpl();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_COALESCING, false);
        factory.setProperty(XMLInputFactory2.P_LAZY_PARSING, false);
        try {
            return factory.createXMLStreamReader(input);
        } catch (XMLStreamException | RuntimeException e) {
            throw malformed(input, e, null);
        }
    }

    private int next() throws IOException, ManifestException {
        int event;
        try {
            event = reader.next();
        } catch (XMLStreamException | RuntimeException e) {
            throw malformed(input, e, reader.getLocation());
        }
        input.eventSeen();
        if (event == XMLStreamConstants.DTD || event == XMLStreamConstants.ENTITY_REFERENCE) {
            throw problem(ManifestProblem.XML_DECLARATIONS);
        }
        if (event == XMLStreamConstants.START_ELEMENT && ++depth > MAX_DEPTH) {
            throw problem(ManifestProblem.XML_EXCESSIVE);
        }
        if (event == XMLStreamConstants.END_ELEMENT) {
            depth--;
        }
        return event;
    }

    private String textPiece() throws IOException, ManifestException {
        try {
            return reader.getText();
        } catch (RuntimeException e) {
            throw malformed(input, e, reader.getLocation());
        }
    }

    private void refuseText(String text) throws ManifestException {
        if (!text.isBlank()) {
            throw problem(ManifestProblem.MHL_UNEXPECTED_TEXT, text.strip());
        }
    }

    private static boolean isText(int event) {
        return event == XMLStreamConstants.CHARACTERS
                || event == XMLStreamConstants.CDATA
                || event == XMLStreamConstants.SPACE;
    }

    /** The parser throws the same for a bad document and a failing source; only the first is the document's fault. */
    private static ManifestException malformed(XmlInput input, Exception e, @Nullable Location current)
            throws IOException {
        IOException fault = input.fault();
        if (fault != null) {
            throw fault;
        }
        Location place = e instanceof XMLStreamException x && x.getLocation() != null ? x.getLocation() : current;
        ManifestProblem problem = input.excessive() ? ManifestProblem.XML_EXCESSIVE : ManifestProblem.XML_MALFORMED;
        return place == null
                ? new ManifestException(problem, 1, 1)
                : new ManifestException(
                        problem, Math.max(1, place.getLineNumber()), Math.max(1, place.getColumnNumber()));
    }
}
