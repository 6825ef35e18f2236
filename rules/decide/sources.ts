// Where limits come from, said once. A figure nobody published is called ours.

export const OURS = 'ours, from no source';
export const PRACTICE = 'common practice, no source';
export const TOLD = 'told in the farm file';
export const TOLD_AND_OURS = 'told in the farm file, and a margin of ours';
export const WET_RULE = 'wet rule of the place in the farm file; ours where it tells none';
export const ENTERED = 'entered by the grower';
export const MEASURED = 'measured here';

export const FORETOLD = 'foretold by whoever pushes the forecast, not checked here';

export const FROST_BOOK =
  'Snyder and de Melo-Abreu 2005, Frost Protection, FAO, vol. 1: low from readings after sunset';
export const COST_LOSS =
  'cost-loss rule, Murphy 1977, Monthly Weather Review 105:803, less the share covering prevents';
export const BASIL_WET =
  'basil downy mildew needs 4 h of wet leaves (Massachusetts fact sheet); as a general limit ours';
export const VENT_GAIN =
  'water held, Allen et al. 1998, FAO-56 eq. 11; 0.3 g/m³ is one standard probe error, ours';
export const TUNNEL_NIGHT =
  'a closed film tunnel keeps 1 to 1.5 °C: Savage 1980, Agrochemophysica 12:5; the steps are ours';
export const OPEN_NIGHT =
  'open vents at night cut damp hours: Abreu et al. 1994, Acta Horticulturae 366:195, mild winters';
export const NEWTON = "Newton's law of cooling";
