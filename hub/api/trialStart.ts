import type { LimitNow, TrialStart } from '../contract/index.ts';
import { limitsOf } from '../trial/index.ts';
import { trialCaution, trialLimitWords, wholeFarm } from '../words/index.ts';
import type { ApiParts } from './parts.ts';
import { whose } from './shownTrial.ts';

const YEAR = 365; // days
/** Under so many days of readings a trial says little: no season, few losses. Ours. */
const FEW = 28;

/** How far a limit is moved by a tap, and how far it may go: ours; the farm file's own bounds hold besides. */
const reach: Readonly<Record<LimitNow['what'], Pick<LimitNow, 'step' | 'min' | 'max'>>> = {
  'wet-at': { step: 1, min: 50, max: 100 },
  'wet-below': { step: 1, min: 50, max: 100 },
  'wet-hours': { step: 1, min: 1, max: 48 },
  'cover-minutes': { step: 5, min: 0, max: 600 },
  'cover-value': { step: 50, min: 0, max: 100_000 },
  'cover-damage': { step: 0.5, min: -10, max: 5 },
  'set-point': { step: 0.5, min: -5, max: 20 },
  'room-limit': { step: 0.5, min: -5, max: 25 },
  'heat-limit': { step: 1, min: 10, max: 50 },
  'band-top': { step: 1, min: 5, max: 45 },
  chill: { step: 1, min: -10, max: 20 },
  wage: { step: 1, min: 0, max: 500 },
};

/** What a page needs before a limit is tried. */
export function trialStart(parts: ApiParts, newest: string | null): TrialStart {
  const calendar = parts.calendar();
  const days = readingDays(parts);
  const currency = parts.farm().file.farm.money;
  const limits = limitsOf(parts.farm().file).map(({ told, ...limit }): LimitNow => {
    const words = trialLimitWords({ ...limit, told, currency });
    return { ...limit, ...words, ...reach[limit.what], name: whose(parts, limit.of) ?? wholeFarm };
  });
  if (days === null) return { limits, days, caution: null, newest };
  const count = Math.round(
    (calendar.bounds(days.to).begins - calendar.bounds(days.from).begins) / 86_400_000,
  );
  const caution = count < FEW ? trialCaution(count) : null;
  const year = calendar.add(days.to, -YEAR);
  return {
    ...{ limits, caution, newest },
    days: { from: [days.from, year].sort()[1] ?? year, to: days.to },
  };
}

/** From the first reading of a placed probe to today; null without any. */
export function readingDays(parts: ApiParts): { from: string; to: string } | null {
  const { probes, readings } = parts.store;
  const placed = new Set(probes.placements().map(({ probe }) => probe));
  const first = [...placed].flatMap((probe) => readings.oldestAt(probe, 'temperature') ?? []);
  if (first.length === 0) return null;
  const { dayOf } = parts.calendar();
  return { from: dayOf(Math.min(...first)), to: dayOf(parts.clock.now()) };
}
