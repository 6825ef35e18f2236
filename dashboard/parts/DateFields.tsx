/** From one day to another, both of them; neither can be set past the other. */
export function DateFields({
  text,
  from,
  to,
  onFrom,
  onTo,
}: {
  text: { readonly from: string; readonly to: string };
  from: string;
  to: string;
  onFrom: (day: string) => void;
  onTo: (day: string) => void;
}) {
  return (
    <>
      <label>
        {text.from}
        <input
          type="date"
          required
          max={to}
          value={from}
          onInput={(event) => onFrom(event.currentTarget.value)}
        />
      </label>
      <label>
        {text.to}
        <input
          type="date"
          required
          min={from}
          value={to}
          onInput={(event) => onTo(event.currentTarget.value)}
        />
      </label>
    </>
  );
}
