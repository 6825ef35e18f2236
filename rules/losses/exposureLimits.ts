import {
  botrytisModel,
  EVENT_INCIDENCE,
  hoursToIncidence,
  OUTBREAK_WET_HOURS,
} from '../disease/index.ts';
import { celsius } from '../units.ts';

/** A condition that may go before losses. */
export type Exposure =
  | 'wet-spell'
  | 'wet-hours'
  | 'infection-index'
  | 'hot-hours'
  | 'cold-hours'
  | 'cool-room-hours';

const DAYS = 7; // of exposure before a week's losses
// Ours, from no source: long enough that one warm afternoon or one odd reading is no exposure.
const HOT_HOURS = 3; // h in 7 days over the crop's heat limit
const COLD_HOURS = 3; // h in 7 days under what the crop bears
const COOL_ROOM_HOURS = 2; // h over the room's limit; common practice, no source

/** More than a tenth of what stood there counts as a loss to be explained. Ours, from no source. */
export const LOSS_LIMIT = 0.1;
/** How many days of weather before a week are held against its losses. */
export const EXPOSURE_DAYS = DAYS;

/**
 * More than this was an exposure. Fixed before anybody looks at losses, and the same for every
 * farm: a limit moved until a difference shows would make its chance worthless.
 *
 * Wet spell: hours after which, at the best temperature for the fungus, the grey mould index stands
 * at an event (Bulger, Ellis & Madden 1987). Wet hours: 7 a day over the week (Yunis et al. 1994).
 * Index: the level of an event. Hours too hot, too cold and in a warm cool room: ours.
 */
export const exposureLimits: Readonly<
  Record<Exposure, { readonly limit: number; readonly unit: string }>
> = Object.freeze({
  'wet-spell': {
    limit: hoursToIncidence(celsius(botrytisModel.peak), EVENT_INCIDENCE, botrytisModel) as number,
    unit: 'h',
  },
  'wet-hours': { limit: DAYS * OUTBREAK_WET_HOURS, unit: 'h' },
  'infection-index': { limit: EVENT_INCIDENCE, unit: '' },
  'hot-hours': { limit: HOT_HOURS, unit: 'h' },
  'cold-hours': { limit: COLD_HOURS, unit: 'h' },
  'cool-room-hours': { limit: COOL_ROOM_HOURS, unit: 'h' },
});
