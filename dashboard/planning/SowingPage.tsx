import './planning.css';
import { useState } from 'preact/hooks';
import type { SowingPlanShown } from '../../hub/contract/index.ts';
import { useFacts } from '../coolRoom/useFacts.ts';
import { Fault } from '../parts/Fault.tsx';
import { Heading } from '../parts/Heading.tsx';
import { farm, mayChange } from '../state.ts';
import { addDays } from '../times.ts';
import { words } from '../words.ts';
import { AddWant } from './AddWant.tsx';
import { CalendarPart } from './CalendarPart.tsx';
import { DeliveryCard } from './DeliveryCard.tsx';
import { PlanWork } from './PlanWork.tsx';
import { SowingRows } from './SowingRows.tsx';

const WEEKS = [6, 12] as const;

/** What to sow in the coming weeks, and what each delivery is covered by. */
export function SowingPage() {
  const text = words.planning;
  const [weeks, setWeeks] = useState<number>(WEEKS[0]);
  const {
    facts: plan,
    fault,
    again,
  } = useFacts<SowingPlanShown>(`/api/sowing-plan?weeks=${weeks}`);
  const [said, setSaid] = useState('');
  const money = farm.value?.money;
  if (!plan || money === undefined)
    return (
      <>
        <Heading title={text.title} />
        <Fault sentence={fault} again={again} />
      </>
    );
  const stored = (sentence: string) => {
    setSaid(sentence);
    again();
  };
  const soon = addDays(plan.today, 6);
  const now = plan.sowings.filter(({ day }) => day <= soon);
  const later = plan.sowings.filter(({ day }) => day > soon);
  const fortnight = addDays(plan.today, 13);
  const near = plan.deliveries.filter(({ day }) => day <= fortnight);
  const far = plan.deliveries.filter(({ day }) => day > fortnight);
  return (
    <div class="plan">
      <Heading title={text.title} />
      {fault !== undefined && <Fault sentence={fault} again={again} />}
      {plan.missing.length > 0 && <p class="sentence">{text.missing(plan.missing)}</p>}
      <div class="plan-columns">
        <section>
          <h2>{text.toSow}</h2>
          {plan.sowings.length === 0 ? (
            <p>{text.nothingAtAll}</p>
          ) : now.length === 0 ? (
            <p>{text.nothingNow}</p>
          ) : (
            <>
              <SowingRows sowings={now} onSown={stored} />
              <p class="quiet">{text.sownWhy}</p>
            </>
          )}
          {later.length > 0 && (
            <details>
              <summary>{text.later(later.length)}</summary>
              <SowingRows sowings={later} />
            </details>
          )}
          <p>
            <a class="plan-link" href="/week">
              {text.sheetLink}
            </a>
          </p>
        </section>
        <section>
          <h2>{text.deliveries}</h2>
          <div class="plan-buttons plan-weeks">
            {WEEKS.map((n) => (
              <button type="button" key={n} aria-pressed={n === weeks} onClick={() => setWeeks(n)}>
                {text.weeks(n)}
              </button>
            ))}
          </div>
          {plan.deliveries.length === 0 && <p>{text.noDeliveries}</p>}
          {near.map((delivery) => (
            <DeliveryCard key={delivery.day} delivery={delivery} onStored={stored} />
          ))}
          {far.length > 0 && (
            <details>
              <summary>
                {text.laterDeliveries(
                  far.length,
                  far.filter(({ state }) => state === 'short').length,
                )}
              </summary>
              {far.map((delivery) => (
                <DeliveryCard key={delivery.day} delivery={delivery} onStored={stored} />
              ))}
            </details>
          )}
          {mayChange.value && <AddWant plan={plan} onStored={stored} />}
        </section>
      </div>
      <p role="status" class="answered">
        {said}
      </p>
      <PlanWork plan={plan} money={money} />
      {mayChange.value && <CalendarPart />}
    </div>
  );
}
