package rollbook.production;

/** What a person does on a production. An administrator may do all that the others may. */
public enum Role {
    /** Logs rolls and offloads, uploads manifests, clears cards. */
    WRANGLER,
    /** Keeps inventory, schedule and supplies. */
    OFFICE,
    /** Watches storage and proof, receives media. */
    POST,
    /** Reads everything, changes nothing. */
    READER,
    /** Sets the production up and gives people their roles. */
    ADMINISTRATOR
}
