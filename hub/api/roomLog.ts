import { recordDay } from '../../rules/cooler/index.ts';
import type {
  CheckedProbe,
  CoolRoomLog,
  CorrectiveAction,
  FarmPlace,
  ProbeCheck,
} from '../contract/index.ts';
import { OF_ROOM, placeSeries } from '../lots/index.ts';
import { CHECK_DAYS, type Check, makeActions, makeChecks } from '../record/index.ts';
import { checkHow, checkWords, probeCheckWords, recordWords } from '../words/index.ts';
import { type ApiParts, Refused } from './parts.ts';
import { iso } from './present.ts';

const DAY = 86_400_000; // ms
const USUAL_DAYS = 7;
/** Readings of a quarter are read in a moment, those of a year are not. Ours. */
const MOST_DAYS = 92;
/** Where the farm file tells no limit it could not be read at all. */
const LIMIT = 5; // °C

const hundredths = (value: number) => Number(value.toFixed(2));
const hundredthsOrNull = (value: number | null) => (value === null ? null : hundredths(value));

export const shownCheck = (check: Check, now: number): ProbeCheck => {
  const [first] = check.points;
  const offset = hundredths((first?.reading ?? 0) - (first?.reference ?? 0));
  return {
    ...check,
    offset,
    words: checkWords({ ...check, offset }),
    at: iso(check.at),
    points: [...check.points],
    doubts: [...check.doubts],
    ageDays: hundredths((now - check.at) / DAY),
  };
};

/** Corrective actions of a room, oldest first; one that was corrected is still told. */
export function shownActions(parts: ApiParts, room: string): CorrectiveAction[] {
  const actions = makeActions(parts.store).of(room);
  const corrected = new Set(actions.map(({ corrects }) => corrects));
  return actions.map((action) => ({
    ...action,
    at: iso(action.at),
    enteredAt: iso(action.enteredAt),
    corrected: corrected.has(action.entry),
  }));
}

/** Probes that measure temperature in a room now, with their last check. */
export function checkedProbes(parts: ApiParts, room: string, now: number): CheckedProbe[] {
  const checks = makeChecks(parts.store);
  return parts.snapshots.spots
    .current()
    .filter(({ place }) => place === room)
    .flatMap(({ probe, spot }) => {
      const newest = parts.store.readings.newest(probe, 'temperature');
      if (!newest) return [];
      const last = checks.last(probe);
      const shown = last ? shownCheck(last, now) : null;
      const days = parts.farm().place(room)?.checkDays ?? CHECK_DAYS;
      const due = checks.isDue(last, now, days);
      const fresh = newest.flag === null && now - newest.t < 30 * 60_000;
      return [
        {
          ...{ probe, spot, due, last: shown },
          reading: fresh ? hundredths(newest.value) : null,
          words: probeCheckWords({ probe, due, last: shown, days }),
        },
      ];
    });
}

/** The days asked for, the last seven when none are. @throws Refused 400 */
export function logRange(
  { calendar, clock }: ApiParts,
  asked: { readonly from?: string | undefined; readonly to?: string | undefined },
): { from: string; to: string } {
  const to = asked.to ?? calendar().dayOf(clock.now());
  const from = asked.from ?? calendar().add(to, 1 - USUAL_DAYS);
  if (from > to) throw new Refused(400, `Expected from at most ${to}, got ${from}`);
  if (calendar().add(from, MOST_DAYS) <= to)
    throw new Refused(400, `Expected at most ${MOST_DAYS} days, got from ${from} to ${to}`);
  return { from, to };
}

/** A room's record by local day: measured, not measured, and what people did about it. */
export function roomLog(
  parts: ApiParts,
  room: FarmPlace,
  { from, to }: { readonly from: string; readonly to: string },
): CoolRoomLog {
  const now = parts.clock.now();
  const calendar = parts.calendar();
  const limit = room.limit ?? LIMIT;
  const days: CoolRoomLog['days'] = [];
  for (let day = from; day <= to; day = calendar.add(day, 1)) {
    const { begins, ends } = calendar.bounds(day);
    if (begins >= now) break; // what is still to come is not time without readings
    const { readings } = parts.snapshots.lots;
    const series = placeSeries(readings, room.id, OF_ROOM, begins, Math.min(ends, now));
    const facts = recordDay(series, limit);
    days.push({
      day,
      aboveHours: facts.aboveHours,
      belowHours: facts.belowHours,
      unknownHours: facts.unknownHours,
      highest: hundredthsOrNull(facts.highest),
      lowest: hundredthsOrNull(facts.lowest),
      meanKinetic: hundredthsOrNull(facts.meanKinetic),
      knownShare: Number(facts.knownShare.toFixed(4)),
      gaps: facts.gaps.map((gap) => ({ from: iso(gap.from), to: iso(gap.to) })),
    });
  }
  const begins = calendar.bounds(from).begins;
  const { ends } = calendar.bounds(to);
  const inside = (at: string) => Date.parse(at) >= begins && Date.parse(at) < ends;
  const probes = checkedProbes(parts, room.id, now);
  return {
    room: room.id,
    name: room.name,
    farm: parts.farm().file.farm.name,
    ...{ from, to, limit, days, probes },
    setPoint: room.setPoint ?? 0,
    actions: shownActions(parts, room.id).filter(({ at }) => inside(at)),
    checks: makeChecks(parts.store)
      .of(probes.map(({ probe }) => probe))
      .map((check) => shownCheck(check, now)),
    checkHow: checkHow(),
    words: recordWords(limit),
  };
}
