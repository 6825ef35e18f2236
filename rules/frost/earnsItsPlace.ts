const ENOUGH_NIGHTS = 30; // before a forecast can lose its place; common practice, no source

/**
 * Whether tonight's probability may be shown: no longer once thirty nights have shown no skill
 * against the base rate known beforehand (brierSkill in rules/statistics). Then how often other
 * nights went below stands in for it, and that is said.
 * @param skill null when it could not be reckoned, which is not held against it
 */
export const earnsItsPlace = (skill: number | null, nights: number): boolean =>
  nights < ENOUGH_NIGHTS || skill === null || skill > 0;
