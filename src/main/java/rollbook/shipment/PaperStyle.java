package rollbook.shipment;

/** How the papers look: A4, black on white, for a binder; CSS 2.1 with page margins. */
final class PaperStyle {
    static final String CSS = """
            @page { size: 210mm 297mm; margin: 15mm 14mm 18mm 14mm;
                    @bottom-right { content: counter(page) ' / ' counter(pages); font-family: label-text; font-size: 8pt; } }
            body { font-family: label-text; font-size: 9.5pt; color: #000; margin: 0; }
            h1 { font-size: 17pt; font-weight: normal; margin: 0 0 1mm 0; }
            h2 { font-size: 11pt; font-weight: normal; margin: 6mm 0 1.5mm 0; page-break-after: avoid; }
            p { margin: 0 0 1.5mm 0; }
            code { font-family: label-code; font-weight: bold; font-size: 9pt; white-space: nowrap; }
            .top { width: 100%; border-collapse: collapse; margin-bottom: 3mm; }
            .top td { vertical-align: top; padding: 0; }
            .top .side { width: 34mm; text-align: right; }
            .symbol { width: 32mm; height: 32mm; }
            .quiet { font-size: 8pt; color: #333; }
            .facts { width: 100%; border-collapse: collapse; }
            .facts th { text-align: left; font-weight: normal; color: #333; width: 34mm; padding: 0.6mm 2mm 0.6mm 0; vertical-align: top; }
            .facts td { padding: 0.6mm 0; vertical-align: top; }
            .list { width: 100%; border-collapse: collapse; -fs-table-paginate: paginate; }
            .list th { text-align: left; font-weight: normal; color: #333; border-bottom: 0.3mm solid #000; padding: 1mm 2mm 1mm 0; vertical-align: bottom; }
            .list td { border-bottom: 0.15mm solid #999; padding: 1.2mm 2mm 1.2mm 0; vertical-align: top; }
            .list tr { page-break-inside: avoid; }
            .list .number { text-align: right; white-space: nowrap; padding-right: 4mm; }
            .list .check { width: 22mm; white-space: nowrap; }
            .digest { font-family: label-code; font-weight: bold; font-size: 6.5pt; color: #222; }
            .sign { width: 100%; border-collapse: collapse; margin-top: 12mm; page-break-inside: avoid; }
            .sign td { width: 46%; padding: 0; vertical-align: top; }
            .sign .gap { width: 8%; }
            .sign .line { border-top: 0.25mm solid #000; padding-top: 1mm; height: 13mm; }
            """;

    private PaperStyle() {}
}
