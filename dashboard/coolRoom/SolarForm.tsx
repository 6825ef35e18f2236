import { useState } from 'preact/hooks';
import type { SolarSheet } from '../../hub/contract/index.ts';
import { go } from '../router.ts';
import { keptOf, typedOf } from '../typed.ts';
import { words } from '../words.ts';
import { Field, FormEnd } from './Field.tsx';
import { numberOf } from './useSending.ts';

type Key = keyof SolarSheet['used'];
const KEYS = Object.keys(words.room.solarAsked) as Key[];
const hundredths = (value: number) => Number(value.toFixed(2));
const written = (key: Key, value: number | null) =>
  value === null ? '' : key === 'gap' ? typedOf(hundredths(value), 'K') : String(hundredths(value));

/** One's own numbers for the sheet; they stand in its address, so that it can be kept and passed on. */
export function SolarForm({ room, used, own }: { room: string } & Omit<SolarSheet, 'sheet'>) {
  const text = words.room;
  const shown = Object.fromEntries(KEYS.map((key) => [key, written(key, used[key])]));
  const [said, setSaid] = useState<Record<string, string>>(shown);
  const submit = (event: SubmitEvent) => {
    event.preventDefault();
    const asked = new URLSearchParams({ room });
    for (const key of KEYS) {
      const text = said[key] ?? '';
      const value = key === 'gap' ? keptOf(text, 'K') : numberOf(text);
      if (value !== null && (own.includes(key) || said[key] !== shown[key]))
        asked.set(key, String(value));
    }
    go(`/cool-room/solar?${asked}`);
  };
  return (
    <details class="record-form">
      <summary>{text.solarOwn}</summary>
      <form class="lot-form" onSubmit={submit} aria-label={text.solarOwn}>
        {KEYS.map((key) => (
          <Field
            key={key}
            label={text.solarAsked[key]}
            value={said[key] ?? ''}
            kind="number"
            onType={(value) => setSaid({ ...said, [key]: value })}
          />
        ))}
        <FormEnd label={text.solarWork} sending={false} said="" />
      </form>
    </details>
  );
}
