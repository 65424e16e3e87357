package rollbook.manifest;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import rollbook.manifest.HostileDocuments.Document;
import rollbook.manifest.ManifestEntry.Action;
import rollbook.manifest.ManifestHeader.Process;

/** One sound document of each kind that is read, small enough to be broken everywhere. */
final class SoundDocuments {
    /** The kinds of documents that are read, each with a name that such a document has. */
    enum Kind {
        LIST("card.md5"),
        TABLE("card.csv"),
        BAG_MANIFEST("manifest-md5.txt"),
        HASH_LIST(Manifests.FIRST_GENERATION),
        CHAIN("ascmhl_chain.xml"),
        ARCHIVE("upload.zip");

        private final String fileName;

        Kind(String fileName) {
            this.fileName = fileName;
        }

        String fileName() {
            return fileName;
        }
    }

    private SoundDocuments() {}

    static List<Document> all(SplittableRandom random) {
        List<ManifestEntry> entries = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            entries.add(new ManifestEntry(
                    NastyNames.path(random, false),
                    (long) i,
                    List.of(NastyNames.checksum(random, ChecksumAlgorithm.MD5)),
                    Action.ORIGINAL,
                    1));
        }
        Map<String, byte[]> history = new LinkedHashMap<>();
        for (String name : List.of(Manifests.FIRST_GENERATION, Manifests.SECOND_GENERATION, "ascmhl_chain.xml")) {
            history.put("R001_CU01/ascmhl/" + name, Manifests.example(name));
        }
        byte[] gnu = written(entries, out -> ManifestWriter.gnuList(out, ChecksumAlgorithm.MD5));
        String bagLine = Manifests.ABC_MD5 + "  data/A001/A001C001%0A.mxf\n" + Manifests.EMPTY_MD5 + "  data/x\n";
        Map<String, byte[]> bag = new LinkedHashMap<>();
        bag.put("bag/bagit.txt", ascii("BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n"));
        bag.put("bag/bag-info.txt", ascii("Payload-Oxum: 3.2\nContact-Name: nobody\n  at all\n"));
        bag.put("bag/manifest-md5.txt", ascii(bagLine));
        return List.of(
                new Document("list", "card.md5", gnu),
                new Document("tagged list", "card.txt", written(entries, ManifestWriter::bsdList)),
                new Document(
                        "list ended by NUL",
                        "card.md5",
                        ascii(new String(gnu, StandardCharsets.UTF_8).replace('\n', '\0'))),
                new Document(
                        "table",
                        "card.csv",
                        ascii("path,size,md5,xxh64\r\nA001/a.mxf,3," + Manifests.ABC_MD5
                                + ",44bc2cf5ad770999\r\n\"A001/b \"\"x\"\".mxf\",0," + Manifests.EMPTY_MD5
                                + ",ef46db3751d8e999\r\n")),
                new Document("bag manifest", "manifest-md5.txt", ascii(bagLine)),
                new Document(
                        "hash list",
                        Manifests.FIRST_GENERATION,
                        written(
                                entries,
                                out -> ManifestWriter.ascMhl(
                                        out, new MhlCreator(Instant.EPOCH, "h", "t", "1", "c", Process.IN_PLACE)))),
                new Document(
                        "hash list with folders",
                        Manifests.SECOND_GENERATION,
                        Manifests.example(Manifests.SECOND_GENERATION)),
                new Document("chain", "ascmhl_chain.xml", Manifests.example("ascmhl_chain.xml")),
                new Document("history", "ascmhl.zip", zip(history)),
                new Document("bag", "bag.zip", zip(bag)));
    }

    private interface Opened {
        ManifestWriter on(ByteArrayOutputStream out) throws IOException;
    }

    private static byte[] written(List<ManifestEntry> entries, Opened opened) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ManifestWriter writer = opened.on(out)) {
            for (ManifestEntry entry : entries) {
                writer.write(entry);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    static byte[] zip(Map<String, byte[]> files) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            for (Map.Entry<String, byte[]> file : files.entrySet()) {
                zip.putNextEntry(new ZipEntry(file.getKey()));
                zip.write(file.getValue());
                zip.closeEntry();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
