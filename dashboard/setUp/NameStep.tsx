import { words } from '../words.ts';
import type { Description } from './description.ts';
import { ItemForm } from './ItemForm.tsx';
import { nameFields } from './partFields.ts';

/** What the farm is called, its money, and what an hour of work costs. */
export function NameStep({ now }: { now: Description }) {
  const text = words.setUpSteps;
  const before = now.description ?? { places: [] };
  return (
    <ItemForm
      item={() => now.description?.farm ?? {}}
      specs={nameFields}
      told={words.setUpFields.farm}
      at="farm"
      next={(farm) => {
        const whole =
          farm.name !== undefined && farm.money !== undefined && farm.wage !== undefined;
        const money = String(farm.money).toUpperCase();
        return whole ? { ...before, farm: { ...farm, money } } : null;
      }}
      label={text.storeAndGo}
      then="/set-up/position"
    />
  );
}
