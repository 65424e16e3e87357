package rollbook.label;

import java.util.Map;
import org.springframework.stereotype.Component;

/** Sheets of labels as a PDF in its own size. */
@Component
class LabelPdf {
    private final PdfPress press;

    LabelPdf(PdfPress press) {
        this.press = press;
    }

    byte[] of(LabelRun run) {
        return press.print("label/paper", Map.of("pages", run.placed()), SheetStyle.onPaper(run.sheet()));
    }
}
