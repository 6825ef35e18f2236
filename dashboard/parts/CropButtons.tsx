const BUTTONS = 6; // crops as big buttons; the rest stand in a list

/** Which crop: those entered most often as buttons, the others in a list. */
export function CropButtons<Offer extends { readonly crop: string; readonly name: string }>({
  look,
  legend,
  other,
  crops,
  chosen,
  onChoose,
}: {
  /** Class of the set of buttons. */
  look: string;
  legend: string;
  other: string;
  crops: readonly Offer[];
  chosen: string | null;
  onChoose: (offer: Offer) => void;
}) {
  const others = crops.slice(BUTTONS);
  return (
    <fieldset class={look}>
      <legend>{legend}</legend>
      {crops.slice(0, BUTTONS).map((one) => (
        <button
          type="button"
          key={one.crop}
          aria-pressed={one.crop === chosen}
          onClick={() => onChoose(one)}
        >
          {one.name}
        </button>
      ))}
      {others.length > 0 && (
        <select
          aria-label={other}
          value={others.some((one) => one.crop === chosen) ? (chosen ?? '') : ''}
          onChange={(event) => {
            const found = others.find((one) => one.crop === event.currentTarget.value);
            if (found) onChoose(found);
          }}
        >
          <option value="">{other}…</option>
          {others.map((one) => (
            <option key={one.crop} value={one.crop}>
              {one.name}
            </option>
          ))}
        </select>
      )}
    </fieldset>
  );
}
