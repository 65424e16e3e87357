package rollbook.supplier;

import jakarta.validation.constraints.Email;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.util.UUID;
import rollbook.web.Typed;

/** A contact as a person writes it. */
record ContactForm(
        @NotBlank @Size(max = 80) String role,
        @Size(max = 80) String name,
        @Size(max = 40) String phone,
        @Size(max = 200) @Email String email,
        int version) {

    ContactForm {
        role = Typed.text(role);
        name = Typed.text(name);
        phone = Typed.text(phone);
        email = Typed.text(email);
    }

    static ContactForm blank() {
        return new ContactForm("", "", "", "", 0);
    }

    static ContactForm of(Contact contact) {
        return new ContactForm(contact.role(), contact.name(), contact.phone(), contact.email(), contact.version());
    }

    Contact contact(UUID id) {
        return new Contact(id, role, name, phone, email, version);
    }
}
