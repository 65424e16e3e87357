package rollbook.mail;

import rollbook.production.Membership;

/** A member of a production with a confirmed address, and what they want to be told there. */
record Addressee(Membership membership, Recipient recipient, Subscription subscription) {}
