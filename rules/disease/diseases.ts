import { anthracnose } from './anthracnose.ts';
import { basilInfection } from './basilInfection.ts';
import { basilSporulation } from './basilSporulation.ts';
import { brassicaDownyMildew } from './brassicaDownyMildew.ts';
import { earlyBlight } from './earlyBlight.ts';
import { greyMouldFlowers } from './greyMouldFlowers.ts';
import { greyMouldHouse } from './greyMouldHouse.ts';
import { greyMouldLeaves } from './greyMouldLeaves.ts';
import type { Disease } from './judgement.ts';
import { lateBlight, lateBlightSmith } from './lateBlight.ts';
import { lateBlightInfection } from './lateBlightInfection.ts';
import { lettuceInfection } from './lettuceInfection.ts';
import { lettuceMorning } from './lettuceMorning.ts';
import { powderyMildew } from './powderyMildew.ts';
import { trayDamp } from './trayDamp.ts';

/** Every way of judging a disease that this house knows. */
export const diseases: readonly Disease[] = Object.freeze([
  greyMouldFlowers,
  greyMouldLeaves,
  greyMouldHouse,
  anthracnose,
  powderyMildew,
  basilInfection,
  basilSporulation,
  lettuceMorning,
  lettuceInfection,
  brassicaDownyMildew,
  lateBlight,
  lateBlightSmith,
  lateBlightInfection,
  earlyBlight,
  trayDamp,
]);

/**
 * The ways of judging the diseases that a crop's row in the farm file names; those that are off
 * unless confirmed are left out until they are.
 * @param ids as in the farm file, such as grey-mould
 * @param confirmed ids of diseases seen on this farm
 */
export const diseasesOf = (ids: readonly string[], confirmed: readonly string[]) =>
  diseases.filter(
    ({ of, onlyIfConfirmed }) => ids.includes(of) && (!onlyIfConfirmed || confirmed.includes(of)),
  );
