import { botrytisModel } from './botrytisFruitIncidence.ts';
import { judgeIncidence } from './judgeIncidence.ts';
import { type Disease, fact, notKnown } from './judgement.ts';
import { riskRange } from './riskClass.ts';

const SOURCE =
  'Botrytis cinerea on strawberry flowers; Bulger, Ellis & Madden 1987, Phytopathology 77:1225';

/** Grey mould getting into open strawberry flowers, which shows as rot on the berries weeks later. */
export const greyMouldFlowers: Disease = Object.freeze<Disease>({
  id: 'grey-mould-flowers',
  of: 'grey-mould',
  name: 'Grey mould at flowering',
  source: SOURCE,
  onlyIfConfirmed: false,
  latentDays: [28, 35], // from flower to rotten berry, 4-5 weeks; from memory
  judge: (known) => {
    if (known.flowering === null) return notKnown('open-flowers');
    if (!known.flowering) {
      const because = [fact('open-flowers', 'none', '', null, 'entered by the grower')];
      return { verdict: 'no', risk: riskRange('quiet', 'quiet'), because, missing: [] };
    }
    return judgeIncidence(known, botrytisModel, SOURCE);
  },
});
