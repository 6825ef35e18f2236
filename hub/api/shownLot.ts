import { lotLife, sellFirst } from '../../rules/cooler/index.ts';
import type { LotEntry, Lot as LotShown } from '../contract/index.ts';
import { cropName, keepingOf, type Lot, type LotEvent, type Seen } from '../lots/index.ts';
import {
  exposureWords,
  lotEventWords,
  lotFields,
  lotFieldValue,
  lotLifeWords,
} from '../words/index.ts';
import type { ApiParts } from './parts.ts';
import { iso, isoOrNull, nameOf } from './present.ts';

const DAY = 86_400_000; // ms

const hundredths = (value: number) => Number(value.toFixed(2));
const rounded = (days: { least: number; most: number } | null) =>
  days && { least: hundredths(days.least), most: hundredths(days.most) };

/** Lots in the order to sell them, and those that are gone after them. */
export function shownLots(parts: ApiParts, lots: readonly Lot[], now: number): LotShown[] {
  const shared = new Map(); // what lots that lie side by side go through is worked out once
  const shown = lots.map((lot) => shownLot(parts, lot, now, shared));
  const sale = parts.snapshots.lots.sales(now)[0];
  const turns = new Map<string, { turn: number; slack: number | null }>();
  const rooms = new Set(lots.map(({ place }) => place));
  for (const room of rooms) {
    const here = shown.filter(({ place, state }) => place === room && state === 'stored');
    const inTurn = sellFirst(
      here.map(({ id, life, kgLeft, price, storedAt, crop }) => ({
        id,
        daysLeft: life.days?.least ?? null,
        kilograms: kgLeft,
        pricePerKilogram: price ?? parts.farm().crop(crop)?.price ?? null,
        storedAt: Date.parse(storedAt) as never,
      })),
      sale === undefined ? 0 : Math.max(0, (sale - now) / DAY),
    );
    for (const [i, { id, slack }] of inTurn.entries())
      turns.set(id, { turn: i + 1, slack: sale === undefined ? null : slack });
  }
  return shown
    .map((lot) => {
      const found = turns.get(lot.id);
      const slack = found?.slack ?? null;
      return {
        ...lot,
        turn: found?.turn ?? null,
        slack: slack === null ? null : hundredths(slack),
      };
    })
    .sort((a, b) => (a.turn ?? 1e9) - (b.turn ?? 1e9) || b.storedAt.localeCompare(a.storedAt));
}

function shownLot(parts: ApiParts, lot: Lot, now: number, shared: Map<string, Seen>): LotShown {
  const { lots } = parts.snapshots;
  const farm = parts.farm();
  const through = lots.now(lot, now, shared);
  const keeping = keepingOf(farm, lot.crop);
  const left = lotLife(keeping, through.history, { at: through.at, outdoors: through.outdoors });
  const seen = lots.seen(lot, now, shared);
  const { above, unknown, limit } = through.exposure;
  const clock = lots.clockOf(lot);
  const exposure: LotShown['exposure'] = {
    limit,
    aboveMinutes: hundredths(above),
    unknownMinutes: hundredths(unknown),
    worstMinutes: hundredths(above + unknown),
    clockHours: clock?.clockHours ?? null,
    of: seen.knownHours > 0 && seen.productHours > seen.knownHours / 2 ? 'product' : 'air',
  };
  const life = {
    days: rounded(left.days),
    asLastKnown: rounded(left.asLastKnown),
    asOutdoors: rounded(left.asOutdoors),
    knownHours: hundredths(left.knownHours),
    unknownHours: hundredths(left.unknownHours),
    risk: left.risk,
    source: keeping.source,
  };
  const harvestedAt = isoOrNull(lot.harvestedAt);
  return {
    id: lot.id,
    crop: lot.crop,
    name: cropName(farm, lot.crop),
    kg: lot.kg,
    kgLeft: lot.kgLeft,
    place: lot.place,
    placeName: nameOf(parts, lot.place),
    firstPlace: lot.stays[0]?.place ?? lot.place,
    saidClass: lot.class,
    from: lot.from,
    fromName: lot.from === null ? null : nameOf(parts, lot.from),
    harvestedAt,
    storedAt: iso(lot.storedAt),
    cooled: lot.cooled as LotShown['cooled'],
    class: lots.classOf(lot),
    price: lot.price,
    state: lot.state,
    endedAt: isoOrNull(lot.endedAt),
    taken: lot.taken.map(({ entry, at, how, kg, to, by, who, note, into }) => ({
      entry,
      at: iso(at),
      how,
      kg,
      to,
      by: by ?? who,
      note,
      into: into ?? null,
    })),
    partOf: lot.partOf,
    released: lot.released && { by: lot.released.by, at: iso(lot.released.at) },
    override: lot.override,
    entry: lot.entries.find(({ body }) => body.event === 'put-away')?.id ?? 0,
    entries: lot.entries.length,
    turn: null,
    slack: null,
    life,
    exposure,
    words: lotLifeWords({ life, harvestedAt }, keeping.chillMin),
    clockWords: exposureWords(exposure, clock?.words ?? null, harvestedAt !== null),
  };
}

/** Everything that was ever said of a lot, the newest first; what was taken back is still told. */
export function lotEntries(parts: ApiParts, lot: Lot, undone: ReadonlySet<number>): LotEntry[] {
  return lot.entries
    .map(({ id, t, who, body }) => ({
      entry: id,
      t: iso(t),
      who,
      event: body.event,
      undone: undone.has(id),
      words: lotEventWords(eventFacts(parts, body)),
    }))
    .reverse();
}

function eventFacts(parts: ApiParts, body: LotEvent): Parameters<typeof lotEventWords>[0] {
  const { event } = body;
  if (body.event === 'put-away')
    return {
      event,
      kg: body.facts.kg,
      ...(body.of === undefined ? {} : { of: body.of }),
      warning: body.override?.warning ?? null,
      by: body.override?.by ?? null,
    };
  if (body.event === 'taken') {
    const { kg, how, to, by, note } = body;
    const room = to !== null && body.into !== undefined ? nameOf(parts, to) : to;
    return { event, kg, how, to: room, by, note };
  }
  if (body.event === 'carried') return { event, to: nameOf(parts, body.place) };
  if (body.event === 'released') return { event, by: body.by, note: body.note };
  if (body.event === 'corrected')
    return {
      event,
      note: body.note,
      set: Object.entries(body.set).map(([field, value]) => correctedTo(parts, field, value)),
    };
  return { event };
}

/** A field and what it was corrected to, as people say it. */
function correctedTo(parts: ApiParts, field: string, value: string | number | null): string {
  const name = lotFields[field] ?? field;
  if (value === null) return `${name} ${lotFieldValue(field, null, '')}`;
  if (field === 'crop') return `${name} ${cropName(parts.farm(), String(value))}`;
  if (field === 'from' || field === 'place') return `${name} ${nameOf(parts, String(value))}`;
  return `${name} ${lotFieldValue(field, value, parts.calendar().zone)}`;
}
