package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.manifest.ChecksumAlgorithm.MD5;
import static rollbook.manifest.Manifests.ABC_MD5;
import static rollbook.manifest.Manifests.EMPTY_MD5;
import static rollbook.manifest.Manifests.read;
import static rollbook.manifest.Manifests.refusal;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rollbook.manifest.ManifestHeader.AlgorithmBasis;

/** Quoting follows RFC 4180; which header names what is common practice, no source. */
class TableReaderTests {
    private static final String XXH64 = "44bc2cf5ad770999";

    @ParameterizedTest
    @ValueSource(
            strings = {
                "path,size,md5\r\nClips/a b.mxf,3," + ABC_MD5 + "\r\n",
                "path;size;md5\nClips/a b.mxf;3;" + ABC_MD5,
                "path\tsize\tmd5\nClips/a b.mxf\t3\t" + ABC_MD5 + "\n",
                "\uFEFF\"Path\",\"Size, bytes\",\"MD5 checksum\"\n\"Clips/a b.mxf\",\"3\",\"" + ABC_MD5 + "\"\n",
                "# read again\n\nMD5,Recorded,File name,Bytes\n" + ABC_MD5 + ",Monday,Clips/a b.mxf, 3 \n\n",
                "name,path,length,MD5SUM\na b.mxf,./Clips//a b.mxf,3," + ABC_MD5 + "\n",
                "path,size,algorithm,hash\nClips/a b.mxf,3,md5," + ABC_MD5 + "\n",
            })
    void readsEveryFormOfATable(String content) throws Exception {
        Manifests.Document document = read(content);

        assertThat(document.only().path()).isEqualTo("Clips/a b.mxf");
        assertThat(document.only().sizeBytes()).isEqualTo(3);
        assertThat(document.only().checksums()).containsExactly(Checksum.parse(MD5, ABC_MD5));
        assertThat(document.only().checksums()).noneMatch(Checksum::assumed);
        assertThat(document.header().format()).isEqualTo(ManifestFormat.TABLE);
        assertThat(document.header().entries()).isEqualTo(1);
        assertThat(document.header().basis()).isEqualTo(AlgorithmBasis.STATED);
    }

    @ParameterizedTest
    @CsvSource({
        "md5, MD5, 32",
        "SHA-1, SHA1, 40",
        "sha1sum, SHA1, 40",
        "Sha 256, SHA256, 64",
        "SHA2-512, SHA512, 128",
        "xxh64, XXH64, 16",
        "XXH3, XXH3_64, 16",
        "xxh3-64, XXH3_64, 16",
        "XXH128 hash, XXH128, 32",
    })
    void theColumnNamesTheAlgorithm(String column, ChecksumAlgorithm algorithm, int digits) throws Exception {
        assertThat(read("path," + column + "\na," + "0".repeat(digits)).only().checksums())
                .containsExactly(Checksum.of(algorithm, new byte[digits / 2]));
    }

    @Test
    void readsSeveralDigestsOfAFile() throws Exception {
        String c4 = "c459dsjfscH38cYeXXYogktxf4Cd9ibshE3BHUo6a58hBXmRQdZrAkZzsWcbWtDg5oQstpDuni4Hirj75GEmTc1sFT";
        Manifests.Document document = read("file,md5,xxh64_le,c4,sha224\na," + EMPTY_MD5 + ",990977adf52cbc44," + c4
                + ",00\nb,," + XXH64 + ",,\nc,,,,\n");

        assertThat(document.entries().get(0).checksums())
                .containsExactly(
                        Checksum.parse(MD5, EMPTY_MD5),
                        Checksum.parse(ChecksumAlgorithm.XXH64, XXH64),
                        Checksum.parse(ChecksumAlgorithm.C4, c4));
        assertThat(document.entries().get(0).sizeBytes()).isNull();
        assertThat(document.entries().get(1).checksums()).hasSize(1);
        assertThat(document.entries().get(2).checksums()).isEmpty();
        assertThat(document.header().algorithms())
                .isEqualTo(Set.of(MD5, ChecksumAlgorithm.XXH64, ChecksumAlgorithm.C4));
    }

    @Test
    void concludesTheAlgorithmWhereNoColumnNamesIt() throws Exception {
        Manifests.Document document = read("path,checksum\na," + ABC_MD5);

        assertThat(document.only().checksums().get(0).assumed()).isTrue();
        assertThat(document.header().basis()).isEqualTo(AlgorithmBasis.DIGEST_LENGTH);
        assertThat(read("path,checksum\na," + ABC_MD5, "a.xxh128").header().algorithms())
                .containsExactly(ChecksumAlgorithm.XXH128);
    }

    @Test
    void aListWhoseFirstNameLooksLikeAHeaderStaysAList() throws Exception {
        assertThat(read(ABC_MD5 + "  a,path,md5").only().path()).isEqualTo("a,path,md5");
        assertThat(read("MD5 (a,path,md5,b) = " + ABC_MD5).only().path()).isEqualTo("a,path,md5,b");
    }

    /** RFC 4180, 2: 5 to 7. */
    @Test
    void aCellInQuotationMarksMayHoldAnything() throws Exception {
        Manifests.Document document = read(
                "path,size,md5\r\n\"a,b\",1,\r\n\"c\"\"d\",2,\r\n\"e\r\nf\n\ng\r\",3,\r\nh\"i\",4,\r\n#j,5,\"\"\r\n");

        assertThat(document.paths()).containsExactly("a,b", "c\"d", "e\r\nf\n\ng\r", "h\"i\"", "#j");
        assertThat(document.entries()).extracting(ManifestEntry::line).containsExactly(2L, 3L, 4L, 8L, 9L);
        assertThat(document.entries()).extracting(ManifestEntry::sizeBytes).containsExactly(1L, 2L, 3L, 4L, 5L);
    }

    /** RFC 4180, 2, 4: blanks are part of a cell. */
    @Test
    void keepsBlanksOfPaths() throws Exception {
        assertThat(read("path,size,md5\n a ,1,").only().path()).isEqualTo(" a ");
    }

    @Test
    void readsPathsThatAreSeparatedByBackslashes() throws Exception {
        assertThat(read("path,size,md5\nA001\\Clips\\x.mov,1,\n").only().path()).isEqualTo("A001/Clips/x.mov");
        assertThat(refusal("path,size,md5\nE:\\A001\\x.mov,1,\n").problem()).isEqualTo(ManifestProblem.PATH_DRIVE);
    }

    @Test
    void readsTheLargestSize() throws Exception {
        assertThat(read("path,size,md5\na,9223372036854775807,").only().sizeBytes())
                .isEqualTo(Long.MAX_VALUE);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "NOTHING_LISTED | 1 | 1 | path,size,md5",
                "NOT_A_LIST_LINE | 1 | 1 | path,date,size/a,b,1",
                "NOT_A_LIST_LINE | 1 | 1 | size,md5/1,d41d8cd98f00b204e9800998ecf8427e",
                "TABLE_CELLS | 2 | 1 | path,md5/a",
                "TABLE_CELLS | 3 | 1 | path,md5/a,/a,b,",
                "TABLE_SIZE | 2 | 3 | path,size,md5/a,-1,",
                "TABLE_SIZE | 2 | 3 | path,size,md5/a,1.5,",
                "TABLE_SIZE | 2 | 3 | path;size;md5/a;1,5;",
                "TABLE_SIZE | 2 | 3 | path,size,md5/a,9223372036854775808,",
                "TABLE_SIZE | 2 | 3 | path,size,md5/a,100000000000000000000,",
                "TABLE_SIZE | 2 | 3 | path,size,md5/a,٣,",
                "TABLE_DIGEST | 2 | 3 | path,md5/a,d41d8cd98f00b204e9800998ecf8427",
                "TABLE_DIGEST | 2 | 5 | path,size,xxh64/a,0,d41d8cd98f00b204e9800998ecf8427e",
                "TABLE_DIGEST | 2 | 3 | path,hash/a,352441C2",
                "ALGORITHM_UNSUPPORTED | 2 | 3 | path,algorithm,hash/a,SHA384,00",
                "TABLE_QUOTES | 2 | 1 | path,md5/\"a,/b,",
                "TABLE_QUOTES | 2 | 4 | path,md5/\"a\"b,",
                "TABLE_COLUMN_TWICE | 1 | 1 | path,md5,MD5/a,,",
                "PATH_EMPTY | 2 | 1 | path,md5/,",
                "PATH_PARENT | 2 | 1 | path,md5/..\\a,",
            })
    void refusesWithPlaceAndReason(ManifestProblem problem, long line, int column, String content) {
        ManifestException refusal = refusal(content.replace("/", "\n"));

        assertThat(refusal.problem()).as(refusal.getMessage()).isEqualTo(problem);
        assertThat(refusal.line()).isEqualTo(line);
        assertThat(refusal.column()).isEqualTo(column);
    }

    @Test
    void aRefusalNamesTheFieldAsTheDocumentDoes() {
        assertThat(refusal("Path,\"Size, bytes\",MD5\na,1 MB,").arguments()).isEqualTo(List.of("Size, bytes", "1 MB"));
        assertThat(refusal("Path,MD5 sum\na,x").arguments()).isEqualTo(List.of("MD5 sum", "x"));
    }

    @Test
    void aQuotationMarkLeftOpenCannotFillTheMemory() {
        ManifestException refusal = refusal("path,md5\n\"a\n" + "b\n".repeat(40_000));

        assertThat(refusal.problem()).isEqualTo(ManifestProblem.LINE_TOO_LONG);
        String cell = '"' + "x\n".repeat(9_000) + "\",";
        assertThat(refusal("path,md5\n" + cell.repeat(10)).problem())
                .as("many long cells in one row")
                .isEqualTo(ManifestProblem.LINE_TOO_LONG);
    }

    @Test
    void refusesABareCarriageReturn() {
        assertThat(refusal("path,md5\na\rb,").problem()).isEqualTo(ManifestProblem.CARRIAGE_RETURN);
    }
}
