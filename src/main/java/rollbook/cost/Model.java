package rollbook.cost;

import java.util.Locale;
import rollbook.production.MediaKind;

/** What tells things of one make: their kind and model, however the model is spelled. */
record Model(MediaKind kind, String name) {
    Model {
        name = name.strip().toLowerCase(Locale.ROOT);
    }
}
