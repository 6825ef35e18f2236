import { words } from '../words.ts';

/** A number of trays, typed or stepped with a thumb. */
export function TrayCount({
  label,
  value,
  most,
  onChange,
}: {
  label: string;
  value: string;
  most?: number;
  onChange: (value: string) => void;
}) {
  const text = words.batches;
  const step = (by: number) => {
    const next = Math.max(1, (Number.parseInt(value, 10) || 0) + by);
    onChange(String(most === undefined ? next : Math.min(most, next)));
  };
  return (
    <div class="tray-count">
      <label>
        {label}
        <input
          required
          inputMode="numeric"
          autocomplete="off"
          pattern="[0-9]+"
          value={value}
          onInput={(event) => onChange(event.currentTarget.value)}
        />
      </label>
      <button type="button" aria-label={text.fewer} onClick={() => step(-1)}>
        −
      </button>
      <button type="button" aria-label={text.moreTrays} onClick={() => step(1)}>
        +
      </button>
    </div>
  );
}

/** What was typed as a count; null for what is none. */
export const countOf = (value: string): number | null =>
  /^\d{1,6}$/.test(value.trim()) ? Number(value) : null;
