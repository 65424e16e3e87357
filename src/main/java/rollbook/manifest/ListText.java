package rollbook.manifest;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;

/** The common part of both list styles: UTF-8 lines ended by LF, names escaped where they must be. */
final class ListText {
    private final BufferedWriter out;

    ListText(OutputStream out) {
        this.out = utf8(out);
    }

    /** A lone surrogate has no UTF-8 form; replacing it by a question mark would name another file. */
    static BufferedWriter utf8(OutputStream out) {
        return new BufferedWriter(new OutputStreamWriter(
                out, StandardCharsets.UTF_8.newEncoder().onMalformedInput(CodingErrorAction.REPORT)));
    }

    void line(String before, String name, String after) throws IOException {
        boolean escape = name.indexOf('\\') >= 0 || name.indexOf('\n') >= 0 || name.indexOf('\r') >= 0;
        if (escape) {
            out.write('\\');
        }
        out.write(before);
        out.write(escape ? name.replace("\\", "\\\\").replace("\n", "\\n").replace("\r", "\\r") : name);
        out.write(after);
        out.write('\n');
    }

    void close() throws IOException {
        out.close();
    }
}
