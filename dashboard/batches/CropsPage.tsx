import type { BatchOffers } from '../../hub/contract/index.ts';
import { useFacts } from '../coolRoom/useFacts.ts';
import { Fault } from '../parts/Fault.tsx';
import { Heading } from '../parts/Heading.tsx';
import { farm, faults } from '../state.ts';
import { words } from '../words.ts';
import { CropNeeds } from './CropNeeds.tsx';

/** What each crop of the farm needs, by its past batches. */
export function CropsPage() {
  const zone = farm.value?.zone;
  const { facts, fault, again } = useFacts<BatchOffers>('/api/batches/offers');
  return (
    <>
      <Heading title={words.growing.page} />
      {zone === undefined || !facts ? (
        <Fault sentence={fault ?? faults.value.today} again={again} />
      ) : (
        facts.crops.map(({ crop }) => <CropNeeds key={crop} crop={crop} zone={zone} />)
      )}
    </>
  );
}
