import { type Bounds, hoursWhen, type Window } from '../wetness/index.ts';
import {
  type Circumstances,
  type Disease,
  fact,
  notKnown,
  type Verdict,
  verdictOf,
} from './judgement.ts';
import { minimumAtLeast } from './minimumAtLeast.ts';
import { riskRange } from './riskClass.ts';

// Two days running, each at 10 °C and more, with this many hours at 90 % and more. Hutton criteria:
// in use in Great Britain since 2017, after outbreaks were tested again; the hours need not be
// consecutive (from memory). The older Smith periods ask for 11 h.
const COLDEST = 10; // °C
const DAMP = 90; // %
const HUTTON_HOURS = 6;
const SMITH_HOURS = 11;

/** One calendar day as the criteria see it. */
export type BlightDay = {
  /** Whether it stayed at 10 °C or more. */
  readonly warm: Verdict;
  /** Least and most hours at 90 % or more. */
  readonly dampHours: Bounds;
};

/** A calendar day (local standard time) of an outdoor probe. */
export function blightDay(
  { air, maxGapMinutes }: Pick<Circumstances, 'air' | 'maxGapMinutes'>,
  day: Window,
): BlightDay {
  const damp = ({ humidity }: Circumstances['air'][number]) =>
    humidity === null ? null : humidity >= DAMP;
  const settings = maxGapMinutes === undefined ? {} : { maxGapMinutes };
  return {
    warm: minimumAtLeast(air, COLDEST, day),
    dampHours: hoursWhen(air, damp, day, settings),
  };
}

/** Whether both of two days running met the criteria. */
export function twoDayBlight(days: readonly [BlightDay, BlightDay], hoursNeeded: number): Verdict {
  const each = days.map(({ warm, dampHours: [least, most] }) =>
    verdictOf(warm === 'yes' && least >= hoursNeeded, warm !== 'no' && most >= hoursNeeded),
  );
  if (each.includes('no')) return 'no';
  return each.every((verdict) => verdict === 'yes') ? 'yes' : 'unknown';
}

function criteria(id: string, name: string, hoursNeeded: number, source: string): Disease {
  return Object.freeze<Disease>({
    id,
    of: 'late-blight',
    name,
    source,
    onlyIfConfirmed: false,
    latentDays: null,
    judge: (known) => {
      // Neither was made for the higher temperature and humidity under covers.
      if (known.outdoors !== true) return notKnown('outdoor-probe');
      if (known.calendarDays === null) return notKnown('last-two-days');
      const [before, last] = known.calendarDays;
      const days = [blightDay(known, before), blightDay(known, last)] as const;
      const verdict = twoDayBlight(days, hoursNeeded);
      return {
        verdict,
        risk: riskRange(
          verdict === 'yes' ? 'event' : 'quiet',
          verdict === 'no' ? 'quiet' : 'event',
        ),
        because: days.flatMap(({ warm, dampHours: [least, most] }) => [
          fact('stayed-warm', warm, '', COLDEST, source),
          fact('damp-hours-least', least, 'h', hoursNeeded, source),
          fact('damp-hours-most', most, 'h', hoursNeeded, source),
        ]),
        missing: verdict === 'unknown' ? ['outdoor-air-of-two-days'] : [],
      };
    },
  });
}

/** Late blight by the Hutton criteria: two days with 6 h each. */
export const lateBlight = criteria(
  'late-blight-hutton',
  'Late blight, Hutton criteria',
  HUTTON_HOURS,
  'Phytophthora infestans; Hutton criteria, Great Britain 2017',
);

/** Late blight by the older Smith periods: two days with 11 h each. */
export const lateBlightSmith = criteria(
  'late-blight-smith',
  'Late blight, Smith periods',
  SMITH_HOURS,
  'Phytophthora infestans; Smith periods, Great Britain, in use before 2017',
);
