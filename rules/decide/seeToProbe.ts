import type { AlarmKind, Answer, Evidence } from '../answer.ts';
import { HOUR, instant, MINUTE } from '../units.ts';
import { by, put, readBy, when } from './how.ts';
import { type Look, stands } from './look.ts';
import { airFacts } from './roomFacts.ts';
import { signsOf } from './roomSigns.ts';
import { act, fact, leave, unknown } from './say.ts';
import type { ProbeNow } from './snapshot.ts';
import { OURS, TOLD } from './sources.ts';

const MINUTES_OF_WORK = 10; // common practice, no source
const MISSED = 3; // reports, common practice
const LEAST_SILENCE = 20; // minutes, ours
// Ours, from no source: a pair of alkaline or one lithium cell near its end.
const LOW = { '%': 20, V: 2.4 };
const DAY = 24 * HOUR;
const LOW_ASKED = { '%': 25, V: 2.5 };
// Ours, from no source: one doubtful reading is weather, one in ten is the probe.
const DOUBTFUL_SHARE = 0.1;
const DOUBTFUL_LEAST = 10;

/**
 * A probe is silent, stuck, doubted often, its battery is low, or, in a cool room, its last check in
 * melting ice is long ago. Only placed probes are asked about. Silent is three missed reports, and 20
 * minutes at least.
 *
 * Source: three missed reports are common practice, no source; the other limits are ours.
 */
export function seeToProbe(look: Look, probe: ProbeNow, place: string): Answer {
  const { now, snapshot } = look;
  const inCoolRoom = snapshot.places.some(({ id, kind }) => id === place && kind === 'cool-room');
  const standing = stands(look, 'see-to-probe', place, probe.id);
  const heard = probe.heardAt ?? probe.placedAt;
  if (heard === null) return unknown(['probe-last-heard']);

  const silentMinutes = (now - heard) / MINUTE;
  const limit = Math.max(MISSED * probe.every, LEAST_SILENCE);
  const silent = silentMinutes > limit;
  const stuck = probe.stuck[0];
  const silence = by(
    'seeToProbe',
    put('probe', probe.id),
    when('heard-at', heard),
    when('now', now),
    put('reports-every', probe.every, 'min'),
  );
  const still = inCoolRoom && !silent && stuck === undefined ? stuckInRoom(look, probe, place) : [];
  const because: Evidence[] = [
    ...still,
    ...(silent ? [fact('silent-hours', silentMinutes / 60, 'h', limit / 60, OURS, silence)] : []),
    ...(stuck === undefined
      ? []
      : [fact('stuck-hours', (now - stuck.since) / HOUR, 'h', null, OURS, stuckHow(look, probe))]),
    ...batteryLow(probe, standing),
    ...oftenDoubtful(probe),
    ...unchecked(look, probe),
  ];
  if (because.length === 0) {
    return leave(fact('heard-minutes-ago', silentMinutes, 'min', limit, OURS, silence));
  }
  const grave = silent || stuck !== undefined || still.length > 0;
  const alarm: AlarmKind | null = inCoolRoom && grave ? 'probe' : null;
  const began = silent ? heard + limit * MINUTE : (stuck?.since ?? now);
  return act(because, {
    minutes: MINUTES_OF_WORK,
    doBy: alarm === null ? null : instant(began + HOUR),
    alarm,
  });
}

const stuckHow = ({ now }: Look, { id, stuck }: ProbeNow) =>
  by(
    'seeToProbe',
    put('probe', id),
    put('quantity', stuck[0]?.quantity ?? null),
    when('stuck-since', stuck[0]?.since ?? null),
    when('now', now),
  );

/** A room that cycles moves within the hour: its probe that does not is stuck long before others. */
function stuckInRoom(look: Look, { id }: ProbeNow, place: string): readonly Evidence[] {
  const here = look.snapshot.places.find((one) => one.id === place);
  if (here === undefined || here.coolRoom === null) return [];
  const signs = signsOf(look, here);
  if (signs.room.air?.probe !== id || signs.air.trouble !== 'stuck') return [];
  return airFacts(signs).filter(({ what }) => what === 'one-value-minutes');
}

function batteryLow({ id, battery }: ProbeNow, standing: boolean): readonly Evidence[] {
  if (battery === null) return [];
  const { value, unit, t } = battery;
  const limit = (standing ? LOW_ASKED : LOW)[unit];
  // Above cell voltages it is a pack of some kind, whose end nobody told us.
  return value < limit ? [fact('battery', value, unit, LOW[unit], OURS, readBy(id, t))] : [];
}

function oftenDoubtful({ id, doubtful, every }: ProbeNow): readonly Evidence[] {
  const limit = Math.max(DOUBTFUL_LEAST, Math.ceil((DOUBTFUL_SHARE * 24 * 60) / every));
  if (doubtful < limit) return [];
  const how = by('seeToProbe', put('probe', id), put('reports-every', every, 'min'));
  return [fact('doubtful-readings', doubtful, '', limit, OURS, how)];
}

/** A cool room's probe that was not held against melting ice for long: a reminder, never an alarm. */
function unchecked({ now }: Look, { id, check }: ProbeNow): readonly Evidence[] {
  if (check == null) return [];
  const { at, since, every, told } = check;
  const days = Math.min((now - since) / DAY, check.days);
  if (days <= every) return [];
  const how = by(
    'seeToProbe',
    put('probe', id),
    when(at === null ? 'measures-since' : 'checked-at', since),
    when('now', now),
    put('measured-days', check.days, 'd'),
  );
  const what = at === null ? 'never-checked-days' : 'days-since-check';
  return [fact(what, days, 'd', every, told ? TOLD : OURS, how)];
}
