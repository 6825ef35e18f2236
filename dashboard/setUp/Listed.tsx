import { words } from '../words.ts';

/** What there is so far, each with its buttons. */
export function Listed({
  items,
  onChange,
  onTakeOut,
}: {
  items: readonly { readonly id: string; readonly words: string }[];
  onChange?: (id: string) => void;
  onTakeOut: (id: string) => void;
}) {
  const text = words.setUpSteps;
  if (items.length === 0) return <p class="quiet">{text.none}</p>;
  return (
    <ul class="people-list">
      {items.map((item) => (
        <li key={item.id}>
          <p>{item.words}</p>
          <div class="row-buttons">
            {onChange && (
              <button
                type="button"
                aria-label={text.forName(text.change, item.words)}
                onClick={() => onChange(item.id)}
              >
                {text.change}
              </button>
            )}
            <button
              type="button"
              aria-label={text.forName(text.takeOut, item.words)}
              onClick={() => onTakeOut(item.id)}
            >
              {text.takeOut}
            </button>
          </div>
        </li>
      ))}
    </ul>
  );
}
