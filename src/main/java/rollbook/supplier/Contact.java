package rollbook.supplier;

import java.util.UUID;

/**
 * Whom to ask at a supplier.
 *
 * @param role what for, in words, such as orders or returns
 * @param name empty if nobody in particular
 */
public record Contact(UUID id, String role, String name, String phone, String email, int version) {}
