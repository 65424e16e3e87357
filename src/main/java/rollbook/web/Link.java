package rollbook.web;

/** An address on this site and the text that leads there. */
public record Link(String href, String text) {}
