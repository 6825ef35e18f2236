import { useState } from 'preact/hooks';
import { languageCodes, languages, USUAL_UNITS } from '../../hub/words/page.ts';
import { Choice } from '../coolRoom/Field.tsx';
import { words } from '../words.ts';
import { ChangeForm } from './ChangeForm.tsx';
import type { Description } from './description.ts';

const listed = (names: Readonly<Record<string, string>>) => Object.entries(names);

/** In which language and units people read and type. */
export function UnitsStep({ now }: { now: Description }) {
  const text = words.setUpSteps;
  const farm = now.description?.farm;
  const { units: told = {}, language: spoken = 'en' } = farm ?? {};
  const before = {
    language: spoken,
    temperature: told.temperature ?? USUAL_UNITS.temperature,
    weight: told.weight ?? USUAL_UNITS.weight,
    clock: told.clock ?? USUAL_UNITS.clock,
    weekStart: told.weekStart ?? USUAL_UNITS.weekStart,
  };
  const [said, setSaid] = useState(before);
  const put = (field: keyof typeof said) => (value: string) =>
    setSaid({ ...said, [field]: field === 'clock' ? Number(value) : value });
  const { language, ...units } = said;
  const changed = JSON.stringify(said) !== JSON.stringify(before);
  const days = {
    monday: text.days.monday ?? '',
    sunday: text.days.sunday ?? '',
    saturday: text.days.saturday ?? '',
  };
  return (
    <>
      <p class="quiet">{text.unitsWhy}</p>
      <ChangeForm
        next={farm && changed ? { ...now.description, farm: { ...farm, language, units } } : null}
      >
        <Choice
          label={text.language}
          value={language}
          options={languageCodes.map((code) => [code, languages[code].name])}
          onChoose={put('language')}
        />
        <Choice
          label={text.temperatures}
          value={units.temperature}
          options={listed(text.temperatureUnits)}
          onChoose={put('temperature')}
        />
        <Choice
          label={text.weights}
          value={units.weight}
          options={listed(text.weightUnits)}
          onChoose={put('weight')}
        />
        <Choice
          label={text.clock}
          value={String(units.clock)}
          options={listed(text.clocks)}
          onChoose={put('clock')}
        />
        <Choice
          label={text.weekStart}
          value={units.weekStart}
          options={listed(days)}
          onChoose={put('weekStart')}
        />
      </ChangeForm>
      {farm && <p class="quiet">{text.farmMoney(farm.money)}</p>}
    </>
  );
}
