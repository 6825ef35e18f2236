import { expectRange } from '../expectRange.ts';
import { bestStop, type FruitPatch } from './bestStop.ts';

/** Taking out runners, dead or spotted leaves and rotten fruit, which lowers the chances of rot. */
export type Cleaning = {
  readonly rotWet: number;
  readonly rotDry: number;
  /** Its labour, in money. */
  readonly cost: number;
};

/** Cutting back to the crown. */
export type CuttingBack = {
  /** Worth of the disease carry-over that goes with it. */
  readonly hygiene: number;
  readonly cost: number;
  /** Next year's value of the patch. */
  readonly nextYear: number;
  /** Share of that lost by defoliating now; 0 once dormant, or in the renovation window. */
  readonly lostShare: number;
};

/**
 * Expected value of picking on as it is, of cleaning first, and of cutting back now, each against
 * doing nothing more; cutting gives up what picking on would bring. Defoliated plants did not
 * acclimate to cold (growth-chamber work by Boyce, in Penn State 2015), so cutting green leaves
 * before dormancy is priced by `lostShare`, and offered only as mayCutBack says.
 *
 * Source: expected value; the model is ours, from no source.
 * @throws RangeError as bestStop, or for a share outside 0..1
 */
export function keepCleanOrCut(
  patch: FruitPatch,
  clean: Cleaning,
  cut: CuttingBack,
): { readonly keep: number; readonly clean: number; readonly cut: number } {
  expectRange('share lost by cutting', cut.lostShare, 0, 1, '');
  const keep = bestStop(patch).value;
  const cleaned = bestStop({ ...patch, rotWet: clean.rotWet, rotDry: clean.rotDry }).value;
  return {
    keep,
    clean: cleaned - clean.cost,
    cut: cut.hygiene - cut.cost - cut.lostShare * cut.nextYear - keep,
  };
}

/**
 * Whether covering flowers through the nights ahead is worth its cost: what the patch would bring
 * if no night killed it has to exceed it.
 */
export const worthCovering = (patch: FruitPatch, coverCost: number): boolean =>
  bestStop({ ...patch, killed: patch.killed.map(() => 0) }).value > coverCost;
