package rollbook.forecast;

import java.time.LocalDate;

/** What a forecast of an earlier day said of the days that were then to come. */
record PastForecast(LocalDate today, RecordingOutlook recording) {}
