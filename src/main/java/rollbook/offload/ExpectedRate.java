package rollbook.offload;

import org.jspecify.annotations.Nullable;

/**
 * The rate that a session should reach.
 *
 * @param bytesPerSecond null if no speed of any part is known
 * @param because where the figure comes from, in words
 */
record ExpectedRate(@Nullable Long bytesPerSecond, String because) {}
