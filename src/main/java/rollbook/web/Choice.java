package rollbook.web;

/** One option of a select: the value that is sent and the text that is read. */
public record Choice(String value, String text) {}
