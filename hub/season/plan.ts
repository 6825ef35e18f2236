import { keepCleanOrCut, ripeDay, stopChanges, stopDays } from '../../rules/batches/index.ts';
import { type NightForecast, withTonight } from '../../rules/decide/index.ts';
import { dayLength, dayOfYear } from '../../rules/heat/index.ts';
import type { Calendar } from '../clock.ts';
import type { CutBack, FarmPlace } from '../contract/index.ts';
import type { Farm } from '../farm/index.ts';
import type { PatchFacts } from './patchFacts.ts';

const round = (value: number, digits: number) => Number(value.toFixed(digits));

/** The planner's table of one patch: the two sides of waiting, the window, what would change it. */
export function planOf(
  facts: PatchFacts,
  place: FarmPlace,
  farm: Farm,
  calendar: Calendar,
  forecasts: readonly NightForecast[],
): CutBack {
  const { now, today, counted, terms, figures, assumed, dates, wet } = facts;
  const head = { place: place.id, name: place.name, day: today, damage: now.damage };
  const fruit = now.fruit && withTonight({ forecasts }, { id: place.id, patch: now }, now.fruit);
  const dated = (ahead: number) => calendar.add(today, ahead);
  const ripeOn = (units: number | null) => {
    const day = fruit === null || units === null ? null : ripeDay(fruit.units, units);
    return day === null ? null : dated(day);
  };
  const shownCount = counted && {
    ...{ day: counted.day, who: counted.who },
    cohorts: counted.cohorts
      .filter(({ gone }) => !gone)
      .map(({ stage, kg, flowered, units }) => ({
        ...{ stage, kg, flowered: flowered ?? null },
        units: units === null ? null : round(units, 0),
        ripeOn: ripeOn(units),
      })),
  };
  const common = { ...head, counted: shownCount, terms, assumed, mayCut: now.may };
  if (fruit === null)
    return {
      ...common,
      missing: [...now.missing],
      ...{ tonight: false, rows: [], window: null, ways: null, advice: 'unknown', changes: [] },
    };

  const plan = stopDays(fruit);
  const ways = keepCleanOrCut(fruit, now.clean, now.cut);
  const priceOfCut = now.cut.lostShare === 0 || terms.nextYear !== undefined;
  const cleaningTold = terms.cleanRotWet !== undefined || terms.cleanRotDry !== undefined;
  const asksToCut = now.may === 'grower' || (now.may !== null && ways.cut > 0);
  const advice = asksToCut
    ? 'cut-back'
    : !now.autumn
      ? 'wait'
      : ways.keep <= 0
        ? 'clear-out'
        : ways.clean > ways.keep
          ? 'clean'
          : plan.best === 0
            ? 'pick-last'
            : 'pick-on';
  return {
    ...common,
    missing: [],
    tonight: fruit.killed[0] !== now.fruit?.killed[0],
    rows: plan.days.map(({ day, ripe, survives, sound, value, toGain, lost }) => {
      const date = dated(day);
      return {
        day: date,
        units: round(day === 0 ? 0 : (fruit.units[day - 1] ?? 0), 1),
        daylight: round(dayLength(farm.file.farm.lat, dayOfYear(date)), 1),
        frost: round(day === 0 ? 0 : (fruit.killed[day - 1] ?? 0), 4),
        ...{ survives: round(survives, 4), sound: round(sound, 4) },
        wet: round((day === 0 ? wet[0] : wet[dates.indexOf(date)]) ?? fruit.wetChance, 3),
        ripe: round(ripe, 2),
        ...{ value: round(value, 2), toGain: round(toGain, 2), lost: round(lost, 2) },
      };
    }),
    window: {
      from: dated(plan.from),
      to: dated(plan.to),
      best: dated(plan.best),
      value: round(plan.value, 2),
      nearly: plan.nearly === null ? null : dated(plan.nearly),
      reason: plan.reason,
    },
    ways: {
      keep: round(ways.keep, 2),
      clean: cleaningTold ? round(ways.clean, 2) : null,
      cut: priceOfCut ? round(ways.cut, 2) : null,
    },
    advice,
    changes: stopChanges(fruit, (figures.minutesPerKg * figures.wage) / 60).map(
      ({ what, value, best }) => ({
        what,
        value: round(value, 2),
        unit: what === 'frost-sooner' ? 'd' : what === 'wetter' ? 'probability' : 'money',
        best: dated(best),
      }),
    ),
  };
}
