package rollbook.manifest;

import java.nio.charset.StandardCharsets;
import java.util.function.Consumer;
import rollbook.manifest.HostileDocuments.Document;

/** XML that is known to lead parsers astray: entities, declarations, depth, endless parts. */
final class HostileXml {
    private static final String HEAD = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
    private static final String ROOT = "<hashlist xmlns=\"urn:ASC:MHL:v2.0\" version=\"2.0\">";
    private static final String CREATOR = "<creatorinfo><creationdate>2026-03-04T18:05:12Z</creationdate>"
            + "<hostname>h</hostname><tool>t</tool></creatorinfo><processinfo><process>in-place</process></processinfo>";

    private final Consumer<Document> each;

    private HostileXml(Consumer<Document> each) {
        this.each = each;
    }

    static void forEach(Consumer<Document> each) {
        HostileXml xml = new HostileXml(each);
        xml.declarations();
        xml.excess();
        xml.namespaces();
    }

    private void declarations() {
        StringBuilder laughs = new StringBuilder("<!DOCTYPE hashlist [<!ENTITY a0 \"ha\">");
        for (int i = 1; i < 30; i++) {
            laughs.append("<!ENTITY a").append(i).append(" \"");
            laughs.append(("&a" + (i - 1) + ";").repeat(10)).append("\">");
        }
        laughs.append("]>");
        give("entities that grow tenfold thirty times", laughs + list(hash("&a29;")));
        give("entity that holds itself", "<!DOCTYPE h [<!ENTITY a \"&a;\">]>" + list(hash("&a;")));
        give(
                "large entity many times",
                "<!DOCTYPE h [<!ENTITY a \"" + "x".repeat(50_000) + "\">]>" + list(hash("&a;".repeat(20_000))));
        for (String address : new String[] {
            "file:///etc/passwd", "http://127.0.0.1:9/x", "ftp://127.0.0.1/x", "jar:file:///x!/y", "netdoc:/etc/passwd"
        }) {
            give(
                    "external entity " + address,
                    "<!DOCTYPE h [<!ENTITY x SYSTEM \"" + address + "\">]>" + list(hash("&x;")));
            give("external declarations " + address, "<!DOCTYPE h SYSTEM \"" + address + "\">" + list(hash("a")));
            give(
                    "parameter entity " + address,
                    "<!DOCTYPE h [<!ENTITY % x SYSTEM \"" + address + "\"> %x;]>" + list(hash("a")));
            give(
                    "inclusion " + address,
                    list("<xi:include xmlns:xi=\"http://www.w3.org/2001/XInclude\" href=\"" + address + "\"/>"));
            give("style sheet " + address, "<?xml-stylesheet href=\"" + address + "\"?>" + list(hash("a")));
        }
        give("undeclared entity", list(hash("&unknown;")));
        give("character that can't be", list(hash("a&#0;b&#xD800;c")));
        give("an unended declaration", "<!DOCTYPE h [");
    }

    private void excess() {
        give("deep", ROOT + "<a>".repeat(200_000));
        give("deep and closed", list("<metadata>" + "<a>".repeat(500) + "</a>".repeat(500) + "</metadata>"));
        give("a path without end", list(hash("a".repeat(1_500_000))));
        give("an attribute without end", list("<hash><path size=\"" + "1".repeat(1_500_000) + "\">a</path></hash>"));
        give("a name without end", list("<" + "a".repeat(1_500_000) + "/>"));
        give("a comment without end", list("<!--" + "a".repeat(3_000_000) + "-->" + hash("a")));
        give("an instruction without end", list("<?a " + "a".repeat(3_000_000) + "?>" + hash("a")));
        give("blanks without end", list(" ".repeat(3_000_000) + hash("a")));
        StringBuilder attributes = new StringBuilder("<hash ");
        for (int i = 0; i < 100_000; i++) {
            attributes.append('a').append(i).append("=\"\" ");
        }
        give("a hundred thousand attributes", list(attributes + "/>"));
        StringBuilder names = new StringBuilder("<metadata>");
        for (int i = 0; i < 200_000; i++) {
            names.append("<n").append(i).append("/>");
        }
        give("two hundred thousand names", list(names + "</metadata>" + hash("a")));
        give(
                "a hundred thousand previous paths",
                list("<hash><path>a</path><md5 action=\"original\">" + Manifests.ABC_MD5 + "</md5>"
                        + "<previousPath>b</previousPath>".repeat(100_000) + "</hash>"));
        give(
                "a hundred thousand digests of one file",
                list("<hash><path>a</path>"
                        + ("<md5 action=\"original\">" + Manifests.ABC_MD5 + "</md5>").repeat(100_000) + "</hash>"));
        give(
                "patterns that match in many ways",
                ROOT
                        + CREATOR.replace(
                                "</processinfo>",
                                "<ignore>"
                                        + ("<pattern>" + "*a".repeat(2_000) + "**/".repeat(200) + "b</pattern>")
                                                .repeat(50)
                                        + "</ignore></processinfo>")
                        + "<hashes>" + hash("a".repeat(3_000) + "/" + "a/".repeat(300) + "c") + "</hashes></hashlist>");
        give(
                "a hundred thousand references",
                ROOT + CREATOR + "<references>"
                        + ("<hashlistreference><path>a/ascmhl/0001_a_2026-01-01_000000Z.mhl</path><c4>c4"
                                        + "1".repeat(88) + "</c4></hashlistreference>")
                                .repeat(20_000)
                        + "</references></hashlist>");
        give("the same path a hundred thousand times", list(hash("a").repeat(100_000)));
    }

    private void namespaces() {
        give("no namespace", list(hash("a")).replace(" xmlns=\"urn:ASC:MHL:v2.0\"", ""));
        give("an undeclared prefix", list("<x:hash/>"));
        give("another namespace inside", list("<hash xmlns=\"urn:other\"><path>a</path></hash>"));
        give("a namespace changed half-way", list("<hash><path xmlns=\"\">a</path><md5>x</md5></hash>"));
        give("the same attribute twice", list("<hash><path size=\"1\" size=\"2\">a</path></hash>"));
        give("two roots", list(hash("a")) + list(hash("b")));
        give("text after the end", list(hash("a")) + "more");
        give("elements in a path", list("<hash><path>a<b/>c</path></hash>"));
        give("a hash inside a hash", list("<hash>" + hash("a") + "</hash>"));
        give("XML 1.1", "<?xml version=\"1.1\"?>" + list(hash("a&#1;")));
        give("another encoding", "<?xml version=\"1.0\" encoding=\"UTF-16\"?>" + list(hash("a")));
        give("an unknown encoding", "<?xml version=\"1.0\" encoding=\"x-no-such\"?>" + list(hash("a")));
    }

    private static String hash(String path) {
        return "<hash><path>" + path + "</path><md5 action=\"original\">" + Manifests.ABC_MD5 + "</md5></hash>";
    }

    private static String list(String hashes) {
        return ROOT + CREATOR + "<hashes>" + hashes + "</hashes></hashlist>";
    }

    private void give(String what, String document) {
        String text = document.startsWith("<?xml v") ? document : HEAD + document;
        each.accept(new Document("XML: " + what, Manifests.FIRST_GENERATION, text.getBytes(StandardCharsets.UTF_8)));
    }
}
