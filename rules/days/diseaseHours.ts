import { type Circumstances, type Disease, trayDampHours } from '../disease/index.ts';
import type { Bounds } from '../wetness/index.ts';
import { diseaseDay } from './diseaseDay.ts';
import type { DiseaseHours } from './placeDay.ts';

const CLASSES = ['quiet', 'watch', 'event'] as const;
const AT = { quiet: 0, watch: 1, event: 2 } as const;
const TRAY_MOULD = 'tray-mould';

/**
 * Hours of a disease day in which the weather suited one of a crop's diseases: its wet hours, when
 * any of them judges the day worth watching or worse, at the least and at the most. Tray mould
 * goes by damp hours instead. It never says that a disease is there. null for a crop without any.
 *
 * Source: the judgement of each disease names its own; that all wet hours of such a day count is
 * ours, from no source.
 * @param diseases those of the crop's row in the farm file
 */
export function diseaseHours(
  known: Circumstances,
  diseases: readonly Disease[],
): DiseaseHours | null {
  if (diseases.length === 0) return null;
  const { judgements, wetHours } = diseaseDay(known, diseases, { event: null, looked: null });
  let [least, most] = [0, 0];
  let [mildest, worst] = [0, 0];
  const of = new Set<string>();
  for (const disease of diseases) {
    const risk = judgements[disease.id]?.risk ?? null;
    if (risk === null) continue;
    const [from, to] = risk === 'unknown' ? [0, 2] : [AT[risk.least], AT[risk.most]];
    if (to === 0) continue;
    const span: Bounds = disease.of === TRAY_MOULD ? trayDampHours(known, known.day) : wetHours;
    of.add(disease.of);
    most = Math.max(most, span[1]);
    if (from > 0) least = Math.max(least, span[0]);
    mildest = Math.max(mildest, from);
    worst = Math.max(worst, to);
  }
  const risk = { least: CLASSES[mildest] ?? 'event', most: CLASSES[worst] ?? 'event' };
  return { hours: [least, most], risk, of: [...of] };
}
