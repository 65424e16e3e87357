package rollbook.people;

import java.io.Serial;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.springframework.security.core.CredentialsContainer;
import org.springframework.security.core.GrantedAuthority;
import org.springframework.security.core.userdetails.UserDetails;

/** The person behind a session. What they may do is decided per production, not here. */
public final class SignedInPerson implements UserDetails, CredentialsContainer {
    @Serial
    private static final long serialVersionUID = 1;

    private final UUID id;
    private final String signInName;
    private final String displayName;
    private String passwordHash;

    SignedInPerson(UUID id, String signInName, String displayName, String passwordHash) {
        this.id = id;
        this.signInName = signInName;
        this.displayName = displayName;
        this.passwordHash = passwordHash;
    }

    public UUID id() {
        return id;
    }

    public String displayName() {
        return displayName;
    }

    @Override
    public String getUsername() {
        return signInName;
    }

    @Override
    public String getPassword() {
        return passwordHash;
    }

    @Override
    public Collection<? extends GrantedAuthority> getAuthorities() {
        return List.of();
    }

    /** So that no hash is kept in the session. */
    @Override
    public void eraseCredentials() {
        passwordHash = "";
    }
}
