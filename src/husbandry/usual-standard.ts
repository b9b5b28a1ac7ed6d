// Which space standard a home is held against when nobody has chosen one.

/** The home minimum of a charity: one length long, a third wide and high; what the shop picks instead always shows its
 *  name, and the other standards are shown beside it. Our choice. */
export const usualHomeStandardId = 'home-third';
/** Word for judging no space standard at all. */
export const noStandard = 'none';
