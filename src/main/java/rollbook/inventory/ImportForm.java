package rollbook.inventory;

import org.jspecify.annotations.Nullable;
import org.springframework.web.multipart.MultipartFile;

/** A list to import: a file at first, its text from then on, so that no instance of the portal has to remember it. */
record ImportForm(@Nullable MultipartFile file, @Nullable String csv) {
    boolean hasFile() {
        return file != null && !file.isEmpty();
    }
}
