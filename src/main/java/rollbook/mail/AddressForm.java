package rollbook.mail;

import jakarta.validation.constraints.Email;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.util.Objects;

/** @param version of what the person saw; 0 if there was nothing */
record AddressForm(
        @NotBlank @Email @Size(max = AddressForm.LONGEST) String address, int version) {
    /** RFC 5321, 4.5.3.1.3: a path has 256 characters, two of them angle brackets. */
    static final int LONGEST = 254;

    AddressForm {
        address = Objects.requireNonNullElse(address, "").strip();
    }
}
