package rollbook.manifest;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reads the digest elements of ASC MHL: of a file, of a directory, of another hash list. */
final class MhlDigests {
    private final XmlCursor xml;

    MhlDigests(XmlCursor xml) {
        this.xml = xml;
    }

    /** The algorithm of the current element; null for XXH32, which proves too little and is passed over. */
    @Nullable
    ChecksumAlgorithm algorithm(String parent) throws ManifestException {
        String element = xml.namespace().equals(AscMhlReader.NAMESPACE) ? xml.localName() : "";
        ChecksumAlgorithm algorithm = ChecksumAlgorithm.ofMhlElement(element);
        if (algorithm == null && !element.equals("xxh32")) {
            throw xml.problem(ManifestProblem.MHL_UNKNOWN_ELEMENT, xml.localName(), parent);
        }
        return algorithm;
    }

    Checksum read(ChecksumAlgorithm algorithm) throws IOException, ManifestException {
        String text = xml.text().strip();
        byte[] digest = Checksum.decode(algorithm, text);
        if (digest == null) {
            throw xml.problem(ManifestProblem.DIGEST_MALFORMED, algorithm.label(), text);
        }
        return Checksum.of(algorithm, digest);
    }

    /** All digests inside the current element. */
    List<Checksum> readAll() throws IOException, ManifestException {
        String parent = xml.localName();
        List<Checksum> checksums = new ArrayList<>(1);
        while (xml.nextElement()) {
            ChecksumAlgorithm algorithm = algorithm(parent);
            if (algorithm == null) {
                xml.skip();
            } else {
                add(checksums, read(algorithm));
            }
        }
        return checksums;
    }

    /** One schema lets a format stand twice; two different digests of one are a contradiction. */
    void add(List<Checksum> checksums, Checksum checksum) throws ManifestException {
        for (Checksum earlier : checksums) {
            if (earlier.algorithm() == checksum.algorithm()) {
                if (!earlier.sameBytes(checksum)) {
                    throw xml.problem(
                            ManifestProblem.MHL_TWO_DIGESTS,
                            checksum.algorithm().label());
                }
                return;
            }
        }
        checksums.add(checksum);
    }
}
