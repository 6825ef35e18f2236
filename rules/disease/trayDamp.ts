import { expectRange } from '../expectRange.ts';
import { type Bounds, hoursWhen, type Window } from '../wetness/index.ts';
import { type Circumstances, type Disease, fact, verdictOfRisk } from './judgement.ts';
import { type RiskClass, riskRange } from './riskClass.ts';

// Ours, from no source: no validated model of air and tray mould was found.
const DAMP = 85; // %
const WARM = 15; // °C
const LOOK_FROM = 6; // h in 24
const ACT_ABOVE = 12; // h in 24

const SOURCE = 'ours, from no source; the practice around it is common practice';

/** Least and most hours of a window in which trays stood damp and warm. */
export function trayDampHours(
  { air, maxGapMinutes }: Pick<Circumstances, 'air' | 'maxGapMinutes'>,
  window: Window,
): Bounds {
  const damp = ({ temperature: t, humidity: rh }: Circumstances['air'][number]) =>
    t === null || rh === null ? null : rh >= DAMP && t >= WARM;
  return hoursWhen(air, damp, window, maxGapMinutes === undefined ? {} : { maxGapMinutes });
}

/** Class of damp hours in 24 h: under 6 quiet, 6 to 12 look (watch), over 12 act (event). */
export function classOfDampHours(hours: number): RiskClass {
  expectRange('damp hours in 24 h', hours, 0, 25, 'h'); // a day that turns the clock back has 25
  return hours > ACT_ABOVE ? 'event' : hours >= LOOK_FROM ? 'watch' : 'quiet';
}

/** Damp trays, where damping-off and tray mould start. A tray with mould is discarded whole. */
export const trayDamp: Disease = Object.freeze<Disease>({
  id: 'tray-mould',
  of: 'tray-mould',
  name: 'Damp trays',
  source: SOURCE,
  onlyIfConfirmed: false,
  latentDays: null,
  judge: (known) => {
    const [least, most] = trayDampHours(known, known.day);
    const known24 = (known.day.to - known.day.from) / 3_600_000;
    const tooLittle = most - least > known24 / 2;
    const risk = tooLittle
      ? ('unknown' as const)
      : riskRange(classOfDampHours(least), classOfDampHours(most));
    const verdict = verdictOfRisk(risk);
    return {
      verdict,
      risk,
      because: [
        fact('tray-damp-hours-least', least, 'h', ACT_ABOVE, SOURCE),
        fact('tray-damp-hours-most', most, 'h', ACT_ABOVE, SOURCE),
      ],
      missing: verdict === 'unknown' ? ['canopy-air'] : [],
    };
  },
});
