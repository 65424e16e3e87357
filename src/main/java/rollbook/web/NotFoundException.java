package rollbook.web;

/** Nothing with this address exists for this person: unknown, or another production's. Answered with 404. */
public class NotFoundException extends RuntimeException {}
