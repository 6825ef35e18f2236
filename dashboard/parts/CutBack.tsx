import type { CutBack as Plan } from '../../hub/contract/index.ts';
import { StopChart } from '../charts/StopChart.tsx';
import { farm } from '../state.ts';
import { shortDay } from '../times.ts';
import { words } from '../words.ts';
import { CutBackCare } from './CutBackCare.tsx';
import { CutBackChanges } from './CutBackChanges.tsx';
import { CutBackTable } from './CutBackTable.tsx';
import { CutBackTrial } from './CutBackTrial.tsx';
import { Fault } from './Fault.tsx';
import { FruitCounted } from './FruitCounted.tsx';
import { PatchFigures } from './PatchFigures.tsx';
import { useAnswer } from './useAnswer.ts';

const A_WEEK = 7; // days

/** When to stop picking and clear each patch: the two sides of waiting, and what would change it. */
export function CutBack({ place }: { place?: string } = {}) {
  const text = words.cutBack;
  const path = place
    ? `/api/frost/cut-back?${new URLSearchParams({ place })}`
    : '/api/frost/cut-back';
  const { answer, fault, again, put } = useAnswer<readonly Plan[]>(path);
  if (answer === null)
    return (
      <section class="cut-back">
        <h2>{text.title}</h2>
        <Fault sentence={fault} again={again} />
      </section>
    );
  if (answer.length === 0)
    return (
      <section class="cut-back">
        <h2>{text.title}</h2>
        <p>{text.none}</p>
      </section>
    );
  const kept = (plan: Plan) => put(answer.map((one) => (one.place === plan.place ? plan : one)));
  return (
    <>
      {answer.map((plan) => (
        <PatchPlan key={plan.place} plan={plan} onKept={kept} />
      ))}
    </>
  );
}

function PatchPlan({ plan, onKept }: { plan: Plan; onKept: (plan: Plan) => void }) {
  const text = words.cutBack;
  const { window, rows } = plan;
  const currency = farm.value?.money ?? 'EUR';
  const money = (value: number) => text.money(value, currency);
  const best = rows.find(({ day }) => day === window?.best);
  const [first] = rows;
  const later = rows[A_WEEK];
  const today = window !== null && window.best === plan.day;
  const summary = today
    ? later && text.summaryNow(money(later.lost), shortDay(later.day))
    : first && best && text.summary(money(first.toGain), money(best.lost), shortDay(best.day));
  const short = rows.find(({ daylight }) => daylight !== null && daylight < 10);
  return (
    <section class="cut-back">
      <h2>{text.of(plan.name)}</h2>
      {window === null ? (
        <p>{text.cannot(plan.missing)}</p>
      ) : (
        <>
          <p class="advice">
            <strong>{text.advice[plan.advice]}</strong>{' '}
            {today
              ? window.value > 0 && text.windowNow(money(window.value))
              : text.window(
                  shortDay(window.from),
                  shortDay(window.to),
                  shortDay(window.best),
                  money(window.value),
                )}{' '}
            {text.reasons[window.reason]}
            {window.nearly !== null && ` ${text.nearly(shortDay(window.nearly))}`}
          </p>
          <p>{summary}</p>
          <StopChart plan={plan} label={summary ?? ''} />
          <p class="quiet">
            {plan.tonight ? text.tonight : text.season}
            {short && ` ${text.shortDays(shortDay(short.day))}`}
          </p>
          <CutBackTable plan={plan} />
          <CutBackChanges plan={plan} />
        </>
      )}
      <CutBackCare plan={plan} />
      <FruitCounted plan={plan} onKept={onKept} />
      <PatchFigures plan={plan} onKept={onKept} />
      <CutBackTrial place={plan.place} />
    </section>
  );
}
