import type { ComponentChildren } from 'preact';
import { useRef, useState } from 'preact/hooks';
import { Refusal } from '../ask.ts';
import { go } from '../router.ts';
import { words } from '../words.ts';
import { changeFarm, type Draft, described, refreshDescription, stored } from './description.ts';
import { Preview } from './Preview.tsx';
import { usePreview } from './usePreview.ts';
import { WhoWasQuicker } from './WhoWasQuicker.tsx';

type Fault = (field: string) => string | undefined;

/**
 * A part of the description: while something is typed the hub says what it would change and what is
 * wrong with it; then it is stored.
 *
 * @param next the whole description as it would be; null while there is nothing to try.
 * @param children get what is wrong with a field, said beside it.
 * @param beside whether a fault of this field is shown there.
 * @param then where to go on once it is stored.
 */
export function ChangeForm({
  next,
  children,
  label,
  beside = () => false,
  onStored = () => {},
  then,
  onLeave,
}: {
  next: Draft | null;
  children: ComponentChildren | ((faultOf: Fault) => ComponentChildren);
  label?: string;
  beside?: (field: string) => boolean;
  onStored?: () => void;
  then?: string | undefined;
  /** Goes back without storing. */
  onLeave?: () => void;
}) {
  const text = words.setUpSteps;
  const seen = usePreview(next);
  const [sending, setSending] = useState(false);
  const [said, setSaid] = useState('');
  const [quicker, setQuicker] = useState(false);
  const typed = useRef('');
  const now = next === null ? '' : JSON.stringify(next);
  // What was said of the last try is over once something else is typed.
  if (typed.current !== now) {
    typed.current = now;
    if (now !== '' && said !== '' && !sending && !quicker) setSaid('');
  }
  const send = async (event: SubmitEvent) => {
    event.preventDefault();
    const based = described.value?.version;
    const here = location.pathname; // somebody may have gone on when the answer comes
    if (sending || next === null || based === undefined) return;
    setSending(true);
    setSaid('');
    try {
      await changeFarm(based, next);
      setQuicker(false);
      onStored();
      stored.value = { at: then ?? here, said: text.stored };
      if (then !== undefined && location.pathname === here) go(then);
    } catch (error) {
      const overtaken = error instanceof Refusal && error.status === 409;
      if (overtaken) await refreshDescription(); // what was typed stays, over what there is now
      setQuicker(overtaken);
      const sentence = error instanceof Error ? error.message : String(error);
      setSaid(overtaken ? text.overtaken : text.notStored(sentence));
    } finally {
      setSending(false);
    }
  };
  const faultOf: Fault = (field) =>
    seen?.faults.find((one) => one.field === field || one.field.startsWith(`${field}.`))?.said;
  return (
    <form class="sign-in set-up-form" onSubmit={send} autocomplete="off">
      {typeof children === 'function' ? children(faultOf) : children}
      <Preview seen={seen} beside={beside} />
      <button type="submit" class="main" aria-disabled={sending || next === null}>
        {sending ? text.storing : (label ?? text.store)}
      </button>
      {onLeave && (
        <button type="button" onClick={onLeave}>
          {text.keepIt}
        </button>
      )}
      <p role="status" class="failed-line">
        {said}
      </p>
      {quicker && <WhoWasQuicker />}
    </form>
  );
}
