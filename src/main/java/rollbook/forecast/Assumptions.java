package rollbook.forecast;

/**
 * What the forecast counts with for the whole production.
 *
 * @param fillPercent how much of an item may be filled
 * @param serviceLevelPercent with which chance no pool may run out before the end of the show
 * @param version for noticing that somebody else changed it meanwhile; -1 while the usual ones hold
 */
record Assumptions(int fillPercent, int serviceLevelPercent, int version) {
    /**
     * Fill level: leaves room for what a roll that stays whole can't use, and for the file system. Both are common
     * practice, no source.
     */
    static final Assumptions USUAL = new Assumptions(95, 95, LegSupply.NOT_KEPT);
}
