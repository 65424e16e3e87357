package rollbook.schedule;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;

/** Why a wrapped day is opened again. */
record ReopenForm(@NotBlank @Size(max = 200) String reason) {}
