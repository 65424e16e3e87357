package rollbook.mail;

/** @param version of what the member saw; 0 while nothing was chosen */
record SubscriptionForm(boolean digest, boolean alarms, boolean weekly, boolean muted, int version) {
    static SubscriptionForm of(Subscription subscription) {
        return new SubscriptionForm(
                subscription.digest(),
                subscription.alarms(),
                subscription.weekly(),
                subscription.muted(),
                subscription.version());
    }

    Subscription subscription() {
        return new Subscription(digest, alarms, weekly, muted, version);
    }
}
