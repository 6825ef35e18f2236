import type { Answer, Decision, TaskKind } from '../answer.ts';
import { coolRoom } from './coolRoom.ts';
import { cover } from './cover.ts';
import { clearingOf, cutBack } from './cutBack.ts';
import { freezing } from './freezing.ts';
import { harvest } from './harvest.ts';
import { by, put } from './how.ts';
import { leaveOpen, TONIGHT } from './leaveOpen.ts';
import { type Look, lookAt } from './look.ts';
import { moveProduce } from './moveProduce.ts';
import { moveTrays } from './moveTrays.ts';
import { sunAround } from './night.ts';
import { dewPointSpot, forecastSpots, nightForecast } from './nightForecasts.ts';
import { pickNow } from './pickNow.ts';
import { rank } from './rank.ts';
import { signsOf } from './roomSigns.ts';
import { runGenerator } from './runGenerator.ts';
import { fact, unknown } from './say.ts';
import { seeToProbe } from './seeToProbe.ts';
import { seeToUnit } from './seeToUnit.ts';
import { sellFirst } from './sellFirst.ts';
import { shade } from './shade.ts';
import { shutDoor } from './shutDoor.ts';
import type { CoolRoomNow, NightForecast, PlaceNow, Snapshot } from './snapshot.ts';
import { OURS } from './sources.ts';
import { dueIn, sow, untimed } from './sow.ts';
import { throwOut } from './throwOut.ts';
import { trayRoom } from './trayRoom.ts';
import { uncover } from './uncover.ts';
import { vents } from './vents.ts';
import { water } from './water.ts';

export type Failure = { readonly rule: string; readonly error: string };
export type Outlook = {
  /** In the order of the list: see rank. */
  readonly decisions: readonly Decision[];
  readonly frost: readonly NightForecast[];
  readonly coolRooms: readonly CoolRoomNow[];
  /** Rules that broke down, for the log; each is an `unknown` among the decisions too. */
  readonly failures: readonly Failure[];
};

/**
 * What one snapshot asks for. Each rule runs apart: one that breaks down answers `unknown` with
 * its sentence, and the others never notice.
 *
 * Source: ours; each rule names its own.
 */
export function decide(snapshot: Snapshot): Outlook {
  const failures: Failure[] = [];
  const decisions: Decision[] = [];
  const attempt = <T>(rule: string, run: () => T): T | null => {
    try {
      return run();
    } catch (error) {
      failures.push({ rule, error: error instanceof Error ? error.message : String(error) });
      return null;
    }
  };
  const answer = (kind: TaskKind, place: string, subject: string | null, run: () => Answer) => {
    const said = attempt(`${kind}:${subject ?? place}`, run) ?? broken(failures.at(-1));
    decisions.push({ kind, place, subject, ...said });
  };

  const frost = forecastsOf(snapshot, attempt);
  const look = lookAt(snapshot, frost);
  const coolRooms: CoolRoomNow[] = [];
  for (const place of snapshot.places) {
    if (place.kind === 'tunnel' && place.vents) {
      for (const kind of ['open-up', 'close-up'] as const) {
        answer(kind, place.id, null, () => vents(look, place)[kind]);
      }
      answer('open-up', place.id, TONIGHT, () => leaveOpen(look, place));
    }
    if (place.kind === 'tunnel' && place.crop !== null) {
      const opening = decisions.find(
        (one) => one.kind === 'open-up' && one.place === place.id && one.subject === null,
      );
      answer('shade', place.id, null, () => shade(look, place, opening ?? null));
    }
    if (place.cover !== null) {
      answer('cover', place.id, null, () => cover(look, place));
      answer('uncover', place.id, null, () => uncover(look, place));
    }
    if (place.water != null) answer('water', place.id, null, () => water(look, place));
    if (place.picking != null) answer('pick-now', place.id, null, () => pickNow(look, place));
    if (place.patch !== undefined && place.patch !== null) {
      const clearing = attempt('cut-back', () => clearingOf(look, place));
      const subject = clearing === 'cut-back' ? null : 'clear-out';
      answer('cut-back', place.id, subject, () => cutBack(look, place));
    }
    if (place.coolRoom !== null) {
      for (const [kind, rule] of COLD) answer(kind, place.id, null, () => rule(look, place));
      const room = attempt('cool-room', () => coolRoom(signsOf(look, place)));
      if (room !== null) coolRooms.push(room);
    }
  }
  for (const probe of snapshot.probes) {
    const { place } = probe;
    if (place === null) continue; // not placed yet: nobody misses it
    answer('see-to-probe', place, probe.id, () => seeToProbe(look, probe, place));
  }
  const lots = snapshot.stored?.lots ?? [];
  for (const lot of lots) {
    answer('sell-first', lot.place, lot.id, () => sellFirst(look, lot));
    answer('throw-out', lot.place, lot.id, () => throwOut(look, lot));
  }
  for (const room of new Set(lots.map(({ place }) => place)))
    answer('move-produce', room, 'freezing', () => freezing(look, room));
  for (const place of new Set(snapshot.sowings?.rows.map((row) => row.place))) {
    const due = dueIn(snapshot, place, snapshot.now);
    // Named after the first of its deliveries, so that it is the same task until that is sown.
    if (due[0] !== undefined) answer('sow', place, due[0].delivery, () => sow(look, due));
  }
  for (const { place, id, crop } of snapshot.sowings?.untimed ?? [])
    answer('sow', place, id, () => untimed(crop));
  for (const batch of snapshot.harvests ?? [])
    answer('harvest', batch.place, batch.id, () => harvest(look, batch));
  const room = trayRoom(snapshot);
  // What is asked already keeps its room before anybody else is asked.
  const asked = ({ askedTo }: { askedTo: string | null }) => Number(askedTo === null);
  for (const stand of (snapshot.trays?.standing ?? []).toSorted((a, b) => asked(a) - asked(b))) {
    const acts = (kind: TaskKind) =>
      decisions.some((d) => d.kind === kind && d.place === stand.place && d.verdict === 'act');
    answer('move-trays', stand.place, stand.batch, () =>
      moveTrays(look, stand, room, { openUp: acts('open-up'), shade: acts('shade') }),
    );
  }
  return { decisions: rank(decisions), frost, coolRooms, failures };
}

const COLD: readonly (readonly [TaskKind, (look: Look, place: PlaceNow) => Answer])[] = [
  ['shut-door', shutDoor],
  ['run-generator', runGenerator],
  ['see-to-unit', seeToUnit],
  ['move-produce', moveProduce],
];

const broken = (failure: Failure | undefined) => {
  const how = by('decide', put('rule', failure?.rule ?? ''));
  return unknown(['rule-broke'], [fact('rule-broke', failure?.error ?? '', '', null, OURS, how)]);
};

const cropHere = ({ crops }: Snapshot, { crop }: PlaceNow) =>
  crops.find(({ id }) => id === crop) ?? null;

/** One forecast for each spot; of two probes at one spot the colder speaks. */
function forecastsOf(
  snapshot: Snapshot,
  attempt: <T>(rule: string, run: () => T) => T | null,
): readonly NightForecast[] {
  const night = attempt('night', () => sunAround(snapshot))?.night;
  if (night === undefined) return [];
  const outside = dewPointSpot(snapshot.places);
  const coldest = new Map<string, NightForecast>();
  for (const { place, spot } of forecastSpots(snapshot.places, snapshot.now)) {
    const key = `${place.id} ${spot.spot}`;
    const forecast = attempt(`night-forecast:${key}`, () =>
      nightForecast(
        place,
        spot,
        { outside, pushed: snapshot.pushed ?? [], crop: cropHere(snapshot, place) },
        night,
        snapshot.now,
      ),
    );
    if (forecast === null) continue;
    const other = coldest.get(key);
    if (other === undefined || forecast.low.mean < other.low.mean) coldest.set(key, forecast);
  }
  return [...coldest.values()];
}
