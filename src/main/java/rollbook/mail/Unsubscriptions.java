package rollbook.mail;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.production.Memberships;
import rollbook.web.NotFoundException;
import rollbook.web.Secret;

/** Ends mail by the link in a message. Each link does so once. */
@Service
class Unsubscriptions {
    private final Envelopes envelopes;
    private final Subscriptions subscriptions;
    private final Memberships memberships;

    Unsubscriptions(Envelopes envelopes, Subscriptions subscriptions, Memberships memberships) {
        this.envelopes = envelopes;
        this.subscriptions = subscriptions;
        this.memberships = memberships;
    }

    /**
     * @param productionName what the mail was about; empty if the person belongs to it no more
     * @param used whether the link did its work before
     */
    record Offer(String productionName, Kind kind, boolean used) {}

    /** @throws NotFoundException if no message was sent with the secret */
    Offer offer(Secret secret) {
        Envelopes.Unsubscription found = envelopes.unsubscription(secret);
        String name = memberships
                .of(found.productionId(), found.personId())
                .map(member -> member.productionName())
                .orElse("");
        return new Offer(name, found.kind(), found.used());
    }

    /** A second time it changes nothing: the person may have chosen such mail again. */
    @Transactional
    void end(Secret secret) {
        Envelopes.Unsubscription found = envelopes.unsubscription(secret);
        if (envelopes.use(secret)) {
            memberships
                    .of(found.productionId(), found.personId())
                    .ifPresent(member -> subscriptions.end(member, found.kind()));
        }
    }
}
