import type { CoolRoom } from '../../hub/contract/index.ts';
import { farm } from '../state.ts';
import { when } from '../times.ts';
import { words } from '../words.ts';

/** When the set must next run, for how long, what that burns; its hours; and what can hurt. */
export function Generator({ room, zone, now }: { room: CoolRoom; zone: string; now: number }) {
  const text = words.room;
  const { plan } = room;
  const time = (at: string) => when(Date.parse(at), zone, now);
  const until = plan.changesAt === null ? null : time(plan.changesAt);
  const money = plan.money === null ? null : words.cents(plan.money, farm.value?.money ?? 'EUR');
  const costs = text.runCosts(plan.carbonDioxide, money);
  return (
    <section>
      <h2>{text.generator}</h2>
      <p>
        {plan.runAt === null
          ? text.needNotRun
          : Date.parse(plan.runAt) <= now
            ? text.mustRunNow(plan.runMinutes, plan.litres)
            : text.mustRun(time(plan.runAt), plan.runMinutes, plan.litres)}{' '}
        {plan.runAt !== null &&
          plan.thenHoldsMinutes !== null &&
          text.thenHolds(plan.thenHoldsMinutes)}
      </p>
      {plan.litres === null ? (
        plan.runAt !== null && <p class="quiet">{text.burnsNotTold}</p>
      ) : (
        <p>{text.runCostsLine(costs)}</p>
      )}
      {plan.planned && <p>{plan.on ? text.plannedOn(until) : text.plannedOff(until)}</p>}
      {plan.usual && <p class="quiet">{text.usualHours(plan.usual.hours, plan.usual.days)}</p>}
      <p class="caution">
        {text.fumes} {text.wiring}
      </p>
    </section>
  );
}
