import { words } from '../words.ts';

/** What figures are shown in. */
export const UnitsStep = () => <p>{words.setUpSteps.unitsAre}</p>;
