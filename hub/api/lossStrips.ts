import type { LossStrip, LossStrips } from '../contract/index.ts';
import { addDays, hoursPast, limitsAt, weekOf } from '../losses/index.ts';
import { lossStripWords } from '../words/index.ts';
import type { ApiParts } from './parts.ts';
import { rounded, roundedOrNull } from './present.ts';
import { shownLosses } from './shownLoss.ts';

/** The last weeks of each place, day by day, with what was lost pinned to them. */
export function lossStrips(parts: ApiParts, weeks: number): LossStrips {
  const now = parts.clock.now();
  const to = parts.calendar().dayOf(now);
  const from = addDays(weekOf(to), -7 * (weeks - 1));
  const losses = shownLosses(parts, { from, to }).filter(({ state }) => state === 'holds');
  const quiet = parts.losses.quiet.all();
  const places = parts
    .farm()
    .places.filter(
      ({ id, kind }) => kind !== 'outdoor' || losses.some(({ place }) => place === id),
    );
  return {
    from,
    to,
    places: places.map(({ id, name, kind }): LossStrip => {
      const coolRoom = kind === 'cool-room';
      const facts = new Map(
        parts.snapshots.days.between(id, from, to, now).map((day) => [day.day, day]),
      );
      const hours = hoursPast(parts.losses.hours, id, { from, to }, now);
      const { hotAbove, coldBelow } = limitsAt(parts.farm(), id);
      const days: LossStrip['days'] = [];
      for (let day = from; day <= to; day = addDays(day, 1)) {
        const fact = facts.get(day);
        const hour = hours.get(day) ?? { hot: 0, cold: 0, unknown: 24 };
        const some = hour.unknown < 24;
        days.push({
          day,
          wetHours: coolRoom ? null : roundedOrNull(fact?.wetHours ?? null),
          hotHours: hotAbove === null || !some ? null : hour.hot,
          coldHours: coldBelow === null || !some ? null : hour.cold,
          unknownHours: rounded(coolRoom ? hour.unknown : (fact?.unknownHours ?? 24)),
        });
      }
      const pins = losses
        .filter(({ place }) => place === id)
        .map(({ id: loss, day, look, words }) => ({ id: loss, day, look, words }))
        .sort((a, b) => a.day.localeCompare(b.day));
      const sum = (of: (day: LossStrip['days'][number]) => number | null) => {
        const known = days.flatMap((day) => of(day) ?? []);
        return known.length === 0 ? null : known.reduce((all, value) => all + value, 0);
      };
      return {
        ...{ place: id, name, kind, hotAbove, coldBelow, days, pins },
        quiet: quiet
          .filter((one) => one.place === id && one.week >= from)
          .map(({ week }) => week)
          .sort(),
        words: lossStripWords({
          ...{ name, coolRoom, days: days.length },
          wetHours: sum(({ wetHours }) => wetHours),
          hotHours: sum(({ hotHours }) => hotHours),
          coldHours: sum(({ coldHours }) => coldHours),
          unknownHours: sum(({ unknownHours }) => unknownHours) ?? 0,
          losses: pins.map(({ words }) => words),
        }),
      };
    }),
  };
}
