package rollbook.verification;

/**
 * What a production does to keep its copies whole, besides what is proven of each.
 *
 * @param virusChecked whether somebody says that content is checked for viruses
 * @param writeBlocked whether somebody says that originals are read write-protected
 * @param recheck how often copies are to be read again
 */
record Habits(boolean virusChecked, boolean writeBlocked, RecheckPlan recheck) {}
