package rollbook.offload;

import org.jspecify.annotations.Nullable;

/** @param typed the card's code, typed to show that this card is meant */
record UnloadForm(@Nullable String typed) {
    boolean names(Roll roll) {
        return typed != null && typed.strip().equalsIgnoreCase(roll.cardCode());
    }
}
