package rollbook.inventory;

public enum Ownership {
    BOUGHT,
    HIRED
}
