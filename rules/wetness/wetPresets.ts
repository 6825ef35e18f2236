import type { WetRule } from './wetRule.ts';

/**
 * Thresholds by what is watched. 90 after Alvares et al. 2014 (Theor. Appl. Climatol.), who count
 * hours at 90 % and more; a constant threshold was right in 87-92 % of hours in four regions
 * (Sentelhas et al. 2008, Agric. For. Meteorol. 148:392). The levels of release are ours.
 */
export const leafWetRule: WetRule = Object.freeze({ at: 90, below: 87 });

/** Air inside a densely sown tray is damper than at its probe; both levels ours, from no source. */
export const trayWetRule: WetRule = Object.freeze({ at: 85, below: 82 });
