import { useState } from 'preact/hooks';
import { Field } from '../coolRoom/Field.tsx';
import { words } from '../words.ts';
import { ChangeForm } from './ChangeForm.tsx';
import type { Description } from './description.ts';
import { figure } from './figure.ts';

/** What the farm is called, its money, and what an hour of work costs. */
export function NameStep({ now }: { now: Description }) {
  const text = words.setUpSteps;
  const facts = now.description?.farm;
  const [name, setName] = useState(facts?.name ?? '');
  const [money, setMoney] = useState(facts?.money ?? '');
  const [wage, setWage] = useState(facts?.wage === undefined ? '' : String(facts.wage));
  const told = { name: name.trim(), money: money.trim().toUpperCase(), wage: figure(wage) };
  const whole = name !== '' && money !== '' && wage !== '';
  const before = now.description ?? { places: [] };
  return (
    <ChangeForm next={whole ? { ...before, farm: { ...facts, ...told } } : null}>
      <Field label={text.farmName} value={name} onType={setName} required longest={80} />
      <Field label={text.money} value={money} onType={setMoney} required longest={3} />
      <Field label={text.wage} value={wage} onType={setWage} kind="number" required />
    </ChangeForm>
  );
}
