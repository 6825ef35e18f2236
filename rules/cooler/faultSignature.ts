import { type Fault, type RoomFacts, type Signature, signatureChecks } from './signatureChecks.ts';

/** The first thing to offer for each cause; terms that hub/words turns into words. */
export const FIRST_TASKS: Readonly<Record<Fault, readonly string[]>> = {
  door: ['check-door'], // only after ten minutes high; none when it recovers
  'door-ajar': ['check-door', 'check-seal'],
  defrost: [],
  'power-loss': ['run-generator', 'time-to-limit'],
  'unit-stopped': ['check-controller-unit'],
  'slow-failure': ['check-coil-ice', 'check-fan', 'check-condenser', 'call-technician'],
  'set-point-change': ['check-controller-unit', 'check-set-point'],
  'warm-load': [], // a note; watch the seven-eighths cooling time
  sensor: ['check-probe'], // no product alarm from it alone
};

const HIGH_FOR = 10; // minutes high before a door is worth a task; common practice, no source

export type FaultFinding = {
  /** Every cause whose evidence all holds, with it; two that fit are both shown. */
  readonly fits: readonly Signature[];
  /** Causes that neither fit nor are ruled out, as something is not known. */
  readonly notRuledOut: readonly Signature[];
  /** Nothing fits: the cause is not clear. */
  readonly unclear: boolean;
  readonly firstTasks: readonly string[];
};

/**
 * Which fault the facts speak for. It changes the words of an alarm and never its urgency: a
 * harmless guess must not hide a temperature over its limit.
 * @param minutesHigh how long the air has been above its limit; null for not known
 */
export function faultSignature(facts: RoomFacts, minutesHigh: number | null = null): FaultFinding {
  const all = signatureChecks(facts);
  const fits = all.filter(({ holds }) => holds === true);
  const asked = fits.filter(
    ({ fault }) => fault !== 'door' || (minutesHigh !== null && minutesHigh >= HIGH_FOR),
  );
  return {
    fits,
    notRuledOut: all.filter(({ holds }) => holds === null),
    unclear: fits.length === 0,
    firstTasks: [...new Set(asked.flatMap(({ fault }) => FIRST_TASKS[fault]))],
  };
}
