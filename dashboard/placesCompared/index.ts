export { PlaceStands } from './PlaceStands.tsx';
export { PlacesCompared } from './PlacesCompared.tsx';
export { UndoMove } from './UndoMove.tsx';
