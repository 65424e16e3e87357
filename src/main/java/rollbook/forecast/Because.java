package rollbook.forecast;

/** Why a forecast was computed: what had changed since the one before, a new day, or because a person wanted it. */
enum Because {
    SCHEDULE,
    FORMATS,
    ROLLS,
    MEDIA,
    COPY_PLAN,
    PRODUCTION,
    SUPPLY,
    ORDER,
    NEW_DAY,
    PERSON
}
