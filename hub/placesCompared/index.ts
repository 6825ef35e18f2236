export type { GaveThere } from './gaveThere.ts';
export {
  destination,
  makePlacesCompared,
  type PlacesCompared,
  type PlacesComparedParts,
  USUAL_DAYS,
} from './makePlacesCompared.ts';
export { undoMove } from './undoMove.ts';
