import { expectRange } from '../expectRange.ts';
import { orUnknownField } from '../orUnknownField.ts';
import { expectMoney } from './valuePerAreaDay.ts';

/**
 * What a task is expected to save, money: value at risk x (chance of loss without it - with it) -
 * minutes / 60 x wage. Below 0 it costs more than it saves. The chances are guesses until they have
 * been scored (brierParts): say "about". A saving never silences a safety task.
 * Common practice, no source; the cost-loss ratio of worthActing, with labour as the cost.
 * @throws RangeError for negative money, chances outside 0..1 or minutes outside 0..100,000
 */
export const expectedSaving = orUnknownField(function expectedSaving(task: {
  readonly valueAtRisk: number;
  readonly without: number;
  readonly with: number;
  readonly minutes: number;
  readonly wage: number;
}): number {
  const { valueAtRisk, without, with: done } = task;
  expectMoney('value at risk', valueAtRisk);
  expectRange('chance of loss without the task', without, 0, 1, '');
  expectRange('chance of loss with the task', done, 0, 1, '');
  return valueAtRisk * (without - done) - labourCost(task.minutes, task.wage);
});

/**
 * Fall in the chance of loss at which a task just pays for its labour; above 1 it never can. null,
 * no figure, with nothing at risk.
 * Common practice, no source.
 * @throws RangeError as expectedSaving
 */
export const breakEvenFall = orUnknownField(function breakEvenFall(task: {
  readonly valueAtRisk: number;
  readonly minutes: number;
  readonly wage: number;
}): number | null {
  expectMoney('value at risk', task.valueAtRisk);
  const cost = labourCost(task.minutes, task.wage);
  return task.valueAtRisk === 0 ? null : cost / task.valueAtRisk;
});

function labourCost(minutes: number, wage: number): number {
  expectRange('minutes of work', minutes, 0, 100_000, 'min');
  expectMoney('wage', wage);
  return (minutes / 60) * wage;
}
