package rollbook.mail;

/** Takes messages over. */
interface PostOffice {
    /** Returns once the message is taken over for good. */
    void send(Posting posting) throws Undelivered;
}
