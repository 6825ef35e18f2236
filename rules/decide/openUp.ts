import { CLEAR_GAIN } from '../air/index.ts';
import type { Answer, Evidence } from '../answer.ts';
import { HOUR, instant } from '../units.ts';
import { harmSpared } from './harmSpared.ts';
import { told } from './how.ts';
import { cropOf, type Look, outsideLow, stands } from './look.ts';
import { forecastHow } from './nightForecasts.ts';
import { act, fact, leave, unknown } from './say.ts';
import type { PlaceNow } from './snapshot.ts';
import { ENTERED, OURS, TOLD, TUNNEL_NIGHT } from './sources.ts';
import { type Heat, heatIn } from './ventHeat.ts';
import { gainHow, gainOf, type Wet, wetIn } from './ventWet.ts';
import { dropInRisk, notWorthMinutes } from './worth.ts';

const MINUTES_OF_WORK = 5; // common practice, no source
const CLEAR = 1; // K above the crop's floor at which a night needs no warmth kept. Ours

/**
 * Vents are to be opened: too warm and cooler outside, or wet for long and drier outside. What it
 * spares are the hours over the crop's limit, or of wet leaves, that it ends; where that is less
 * than its minutes at the wage, it is not asked.
 */
export function openUp(look: Look, place: PlaceNow): Answer {
  if (place.opened === true) return leave(fact('vents', 'open', '', null, ENTERED, told));

  const crop = cropOf(look, place);
  const standing = stands(look, 'open-up', place.id);
  const heat = heatIn(look, place, crop, standing);
  const wet = wetIn(look, place, standing);
  const because = [...heat.because, ...wet.because];

  if (heat.hot === true || wet.wet === true) {
    // Frost goes before wetness: freezing air is not let in to dry leaves.
    if (heat.hot !== true && frosty(look)) {
      const cold = look.outsideTemperature;
      return leave(...because, fact('outside-freezing', cold, '°C', 0, OURS, look.outsideHow));
    }
    const doBy = Math.min(dueBy(heat), dueBy(wet));
    const { saves, drop } = harmSpared(look, place, crop, hoursSpared(look, place, heat, wet));
    const idle = notWorthMinutes(saves, MINUTES_OF_WORK, look.snapshot.farm.wage);
    if (idle !== null) return leave(...because, idle);
    return act([...because, ...traded(look, place, heat, wet), dropInRisk(drop)], {
      ...{ minutes: MINUTES_OF_WORK, saves },
      doBy: instant(doBy),
    });
  }
  const missing = [
    ...(heat.hot === null ? heat.missing : []),
    ...(wet.wet === null ? wet.missing : []),
  ];
  return missing.length > 0 ? unknown(missing, because) : leave(...because);
}

const frosty = ({ outsideTemperature }: Look) =>
  outsideTemperature !== null && outsideTemperature <= 0;

/** Harmful hours that opening now ends: where it is usually opened later today, those until then. */
function hoursSpared({ now }: Look, { airing }: PlaceNow, heat: Heat, wet: Wet): number {
  const hours = [heat, wet].map((reason) => ('hoursAhead' in reason ? reason.hoursAhead : 0));
  const most = Math.max(...hours);
  return airing !== undefined && now < airing.opens
    ? Math.min(most, (airing.opens - now) / HOUR)
    : most;
}

const dueBy = (reason: Heat | Wet) => ('doBy' in reason ? reason.doBy : Number.POSITIVE_INFINITY);

/** What opening costs, said beside what it brings. */
function traded(look: Look, place: PlaceNow, heat: Heat, wet: Wet): readonly Evidence[] {
  const lines: Evidence[] = [];
  const gain = heat.hot === true ? gainOf(look, place) : null;
  if (gain !== null && gain <= -CLEAR_GAIN) {
    lines.push(fact('outside-damper-by', -gain, 'g/m³', CLEAR_GAIN, OURS, gainHow(look, place)));
  }
  const floor = cropOf(look, place)?.chill ?? null;
  const tonight = outsideLow(look);
  if (wet.wet === true && tonight !== null && tonight.low.mean < (floor ?? 0) + CLEAR) {
    const source = floor === null ? TUNNEL_NIGHT : TOLD;
    const how = forecastHow(tonight);
    lines.push(fact('night-needs-warmth', tonight.low.mean, '°C', floor ?? 0, source, how));
  }
  return lines;
}
