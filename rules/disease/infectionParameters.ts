import type { InfectionParameters } from './infectionHours.ts';

/** A disease by its id in the farm file, with what it needs and where that comes from. */
export type DiseaseParameters = InfectionParameters & { readonly source: string };

const parameters = Object.freeze({
  'lettuce-downy-mildew': {
    min: 1,
    optimum: 15,
    max: 25,
    wetHours: 4,
    source: 'Bremia lactucae; temperatures from memory, 4 h as Scherm & van Bruggen 1994',
  },
  'basil-downy-mildew': {
    min: 5,
    optimum: 20,
    max: 28,
    wetHours: 4,
    source: 'Peronospora belbahrii; Cohen & Ben-Naim 2016 (4 h); optimum ours',
  },
  'grey-mould': {
    min: 1,
    optimum: 20,
    max: 30,
    wetHours: 7,
    source: 'Botrytis cinerea; Yunis et al. 1994 (7 h); temperatures from memory',
  },
  'brassica-downy-mildew': {
    min: 2,
    optimum: 16,
    max: 35,
    wetHours: 3,
    source: 'Hyaloperonospora; Agriculture Victoria AG0558 and Achar 1998 disagree; a blend, ours',
  },
  'late-blight': {
    min: 1,
    optimum: 15,
    max: 28,
    wetHours: 6,
    source: 'Phytophthora infestans; from memory, low confidence',
  },
} satisfies Readonly<Record<string, DiseaseParameters>>);

type Known = keyof typeof parameters;

/**
 * What infectionHours needs for the diseases a farm file may name. Powdery mildews are left out
 * (free water harms them), and damping-off (a matter of wet medium, not of leaves).
 */
export const infectionParameters: Readonly<
  Record<string, DiseaseParameters> & Record<Known, DiseaseParameters>
> = parameters;
