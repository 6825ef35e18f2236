import type { CutBack } from '../../hub/contract/index.ts';
import { words } from '../words.ts';
import { Mark } from './Mark.tsx';

/** What is known against cutting green leaves, and whether it is offered now. */
export function CutBackCare({ plan }: { plan: CutBack }) {
  const text = words.cutBack;
  return (
    <div class="caution">
      <h3>
        <Mark shape="care" /> {text.care}
      </h3>
      {text.caution.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <p>{plan.mayCut === null ? text.mayNot : text.mayCut[plan.mayCut]}</p>
    </div>
  );
}
