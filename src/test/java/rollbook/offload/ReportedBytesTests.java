package rollbook.offload;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Unit prefixes: SI for powers of 1000, IEC 80000-13 for powers of 1024; their values from memory. */
class ReportedBytesTests {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "512300000000|512300000000",
                "512,300,000,000|512300000000",
                "512 300 000 000 bytes|512300000000",
                "512300000000 B|512300000000",
                "512.3 GB|512300000000",
                "512,3 GB|512300000000",
                "512.3gb|512300000000",
                "0.5123 TB|512300000000",
                "1,024.5 GB|1024500000000",
                "1 kB|1000",
                "1 KiB|1024",
                "1.5 GiB|1610612736",
                "1 TiB|1099511627776",
                "9.223372036 EB|9223372036000000000",
                "9223372036854775807|9223372036854775807",
                "1.6|2",
            })
    void amountsAreReadAsTheyAreShown(String text, long bytes) {
        assertThat(ReportedBytes.parse(text)).hasValue(bytes);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "0",
                "0 GB",
                "-1",
                "512.3.1 GB",
                "512 GBit",
                "512 Gb/s",
                "GB",
                "1e9",
                "12,34,567",
                "9223372036854775808",
                "9.3 EB",
                "99999999999999999999999999 TB",
                "1.5 iB",
            })
    void anythingElseIsNot(String text) {
        assertThat(ReportedBytes.parse(text)).isEmpty();
    }
}
