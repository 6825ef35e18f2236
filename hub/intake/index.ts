import type { Mapping } from '../contract/index.ts';
import { type Amendment, type CleanReading, cleaner, type OffsetOf, type Recall } from './clean.ts';
import { commitQueue, type Release } from './commitQueue.ts';
import { readMessage } from './forms/index.ts';
import type { Foretold, Message, Parsed, RawReading, Refused } from './message.ts';
import type { Pace } from './pace.ts';

export { commitQueue, type Release } from './commitQueue.ts';
export { filterOf, mappingOf, readMessage } from './forms/index.ts';
export type { Foretold, Message, Parsed, RawReading, Refused } from './message.ts';
export { type Pace, steadyPace } from './pace.ts';
export { readTime } from './readTime.ts';
export { inKeptUnit } from './units.ts';

/** What one message comes to, ready to be kept. */
export type Intaken = {
  readonly readings: readonly CleanReading[];
  readonly amendments: readonly Amendment[];
  readonly refused: readonly (Refused & { readonly t: number })[];
  /** Who was heard when, even if nothing of it could be used. */
  readonly heard: ReadonlyMap<string, number>;
  /** What somebody foretells, as issued when it came. */
  readonly foretold: readonly (Foretold & { readonly issuedAt: number })[];
};

export type IntakeParts = {
  readonly mappings: () => readonly Mapping[];
  readonly recall: Recall;
  readonly offsetOf: OffsetOf;
  /** Whether there is a reading already, from before the clock was put back. */
  readonly taken?: (probe: string, quantity: string, t: number) => boolean;
  /** Whether readings under this name are taken; all are when it is absent. */
  readonly admits?: (probe: string) => boolean;
  /** Keeps a batch in one commit, or throws. */
  readonly keep: (batch: readonly Intaken[]) => void;
  readonly waitMs?: number;
  readonly pace?: Pace;
};

export type Intake = ReturnType<typeof makeIntake>;

/** This many values without a time may come at once before their times run ahead. Ours. */
const BURST = 1000; // ms
/** How long a probe that resends a bare number without a time may take to do so. Ours. */
const RESEND_WITHIN = 60_000; // ms

/** From a message, or from readings of a file, to a commit; then the sender is told. */
export function makeIntake(parts: IntakeParts) {
  const { mappings, recall, offsetOf, keep, waitMs, pace } = parts;
  const clean = cleaner(recall, offsetOf);
  const queue = commitQueue<Intaken>(
    (batch) => {
      try {
        keep(batch);
      } catch (error) {
        clean.forget();
        throw error;
      }
    },
    500,
    waitMs ?? 5,
    undefined,
    pace,
  );
  /** The last value without a time that was kept, and when it came. */
  const newest = new Map<string, { receivedAt: number; value: number }>();
  const arrived = new Map<string, number>();

  // A value without a time that comes again (DUP) would get a later time and so count twice.
  const cameBefore = (reading: RawReading, { again, receivedAt }: Message) => {
    const before = newest.get(`${reading.probe}\n${reading.quantity}`);
    return (
      again &&
      reading.t === null &&
      before?.value === reading.value &&
      receivedAt - before.receivedAt < RESEND_WITHIN
    );
  };
  /** Two values without a time in one millisecond are two readings. */
  const timed = (reading: RawReading, receivedAt: number): RawReading => {
    if (reading.t !== null) return reading;
    const name = `${reading.probe}\n${reading.quantity}`;
    const before = arrived.get(name);
    let t =
      before !== undefined && before >= receivedAt && before < receivedAt + BURST
        ? before + 1
        : receivedAt;
    while (parts.taken?.(reading.probe, reading.quantity, t)) t++;
    arrived.set(name, t);
    return { ...reading, t };
  };
  // Those of a wrong clock all stand at the moment they came: side by side, so that all are kept.
  const besideOthers = (reading: CleanReading): CleanReading => {
    const { t } = timed({ ...reading, t: null }, reading.t);
    return { ...reading, t: t ?? reading.t };
  };
  const remember = (readings: readonly RawReading[], receivedAt: number) => {
    for (const { probe, quantity, t, value } of readings)
      if (t === null) newest.set(`${probe}\n${quantity}`, { receivedAt, value });
  };

  /** @param live came over the wire just now; else it is dated by what it holds. */
  const take = (
    { readings, refused, ahead = [] }: Parsed,
    receivedAt: number,
    live: boolean,
  ): Intaken => {
    const kept: CleanReading[] = [];
    const amendments: Amendment[] = [];
    const doubts = refused.map((one) => ({ ...one, t: receivedAt }));
    const heard = new Map<string, number>();
    for (const { source } of refused) heard.set(source, receivedAt);
    for (const reading of readings) {
      const cleaned = clean(reading, receivedAt, live);
      const t = live ? receivedAt : cleaned.reading.t;
      heard.set(reading.probe, Math.max(t, heard.get(reading.probe) ?? t));
      kept.push(cleaned.reading.flag === 'clock' ? besideOthers(cleaned.reading) : cleaned.reading);
      if (cleaned.amendments.length > 0) amendments.push(...cleaned.amendments);
      if (cleaned.refused) doubts.push({ ...cleaned.refused, t });
    }
    const foretold = ahead.map((one) => ({ ...one, issuedAt: receivedAt }));
    return { readings: kept, amendments, refused: doubts, heard, foretold };
  };

  return {
    /** @param release called once, after the commit or its failure. Never throws. */
    receive(message: Message, release: Release) {
      const parsed = admitted(readMessage(message, mappings()), parts.admits);
      const { receivedAt } = message;
      const fresh = parsed.readings.filter((reading) => !cameBefore(reading, message));
      const readings = fresh.map((reading) => timed(reading, receivedAt));
      queue.hold(take({ ...parsed, readings }, receivedAt, true), (error) => {
        if (!error) remember(fresh, receivedAt);
        release(error);
      });
    },
    /** Readings of a file: same checks, same commit. */
    receiveReadings(readings: readonly RawReading[], receivedAt: number, release: Release) {
      queue.hold(take({ readings, refused: [] }, receivedAt, false), release);
    },
    flush: queue.flush,
    /** The clock was put elsewhere: what came before is read from the store again. */
    forget() {
      clean.forget();
      newest.clear();
      arrived.clear();
    },
  };
}

/** Readings under names that are not taken become one refusal each. */
function admitted(parsed: Parsed, admits: IntakeParts['admits']): Parsed {
  if (!admits) return parsed;
  const turned = new Set<string>();
  const readings = parsed.readings.filter(({ probe }) => {
    const may = admits(probe);
    if (!may) turned.add(probe);
    return may;
  });
  if (turned.size === 0) return parsed;
  const sentence = (probe: string) => `Expected a probe of the farm file, got ${probe}`;
  const more = [...turned].map(
    (source): Refused => ({ source, reason: 'too-many-probes', sentence: sentence(source) }),
  );
  return { readings, refused: [...parsed.refused, ...more] };
}
