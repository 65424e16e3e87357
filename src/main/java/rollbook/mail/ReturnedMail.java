package rollbook.mail;

import org.springframework.core.env.Environment;

/**
 * The mailbox to which mail comes back that can't be delivered.
 *
 * @param protocol imaps or imap
 */
record ReturnedMail(String protocol, String host, int port, String user, String password, String folder) {
    private static final String SETTINGS = "rollbook.mail.bounces.";

    static ReturnedMail of(Environment environment) {
        String protocol = environment.getProperty(SETTINGS + "protocol", "imaps");
        return new ReturnedMail(
                protocol,
                environment.getRequiredProperty(SETTINGS + "host"),
                environment.getProperty(SETTINGS + "port", Integer.class, protocol.equals("imaps") ? 993 : 143),
                environment.getProperty(SETTINGS + "username", ""),
                environment.getProperty(SETTINGS + "password", ""),
                environment.getProperty(SETTINGS + "folder", "INBOX"));
    }

    /** Without the password, which belongs into no log. */
    @Override
    public String toString() {
        return "ReturnedMail[" + host + "]";
    }
}
