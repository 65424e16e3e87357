package rollbook.manifest;

import org.jspecify.annotations.Nullable;

/**
 * The files of a document that belong together: one folder, or what is left of the document.
 *
 * @param folder path of the folder in the document; empty for the document's root
 * @param rollCode the roll in the production's spelling, or null where it has to be assigned by hand
 * @param guessed the roll was concluded from names of clips or of the document, not from the folder
 * @param files files listed, repeated ones counted again
 * @param sizeBytes sum of the sizes given
 */
public record RollPart(String folder, @Nullable String rollCode, boolean guessed, long files, long sizeBytes) {}
