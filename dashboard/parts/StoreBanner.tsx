import { store } from '../state.ts';
import { words } from '../words.ts';
import { Mark } from './Mark.tsx';

/** Says on every page that the hub keeps nothing now, and why. */
export function StoreBanner() {
  return (
    <div role="alert" class="banner-place">
      {store.value !== null && (
        <p class="banner store-banner">
          <Mark shape="alarm" />
          <span>
            <strong>{words.keeping.notKept}.</strong> {store.value} {words.keeping.goesOn}
          </span>
        </p>
      )}
    </div>
  );
}
