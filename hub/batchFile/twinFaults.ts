import type { Batches } from '../batches/index.ts';
import type { Group } from './planEvents.ts';
import type { Refusal } from './planned.ts';

/**
 * Trays that left one batch must come to another, and only once: what a file tells of one half is
 * refused.
 */
export function twinFaults(
  given: readonly Group[],
  batches: Batches,
): { groups: readonly Group[]; refused: readonly Refusal[] } {
  const refused: Refusal[] = [];
  let groups = given;
  for (let before = -1; before !== refused.length; ) {
    before = refused.length;
    const names = new Map(groups.map((group) => [group.id, group]));
    groups = groups.filter((group) => {
      const sown = group.events.find(({ event }) => event.event === 'sown');
      const from = sown?.event.event === 'sown' ? (sown.event.partOf?.batch ?? null) : null;
      if (
        sown === undefined ||
        from === null ||
        carriesOff(names.get(from), from, group.id, batches)
      )
        return true;
      refused.push({
        line: sown.line,
        reason: `Expected a row parted of ${from} into ${group.id} beside part_of, got none`,
      });
      for (const { line, event } of group.events)
        if (event.event !== 'sown')
          refused.push({ line, reason: `Its batch cannot be entered (line ${sown.line})` });
      return false;
    });
    const left = new Map(groups.map((group) => [group.id, group]));
    for (const group of groups) {
      const lost = group.events.filter(
        ({ event }) =>
          event.event === 'parted' &&
          (left.get(event.into)?.batch.partOf ?? batches.get(event.into)?.partOf) !== group.id,
      );
      for (const one of lost) {
        group.events.splice(group.events.indexOf(one), 1);
        const into = one.event.event === 'parted' ? one.event.into : '';
        refused.push({
          line: one.line,
          reason: `Expected a batch ${into} that is part_of ${group.id} in into, got none`,
        });
      }
    }
  }
  return { groups, refused };
}

const carriesOff = (group: Group | undefined, from: string, into: string, batches: Batches) =>
  (group?.batch ?? batches.get(from))?.parted.some((one) => one.into === into) === true &&
  (group === undefined ||
    !group.fresh ||
    group.events.some(({ event }) => event.event === 'parted' && event.into === into));
