import type { EventData } from '../hub/contract/index.ts';
import { withProbe, withProbeReading, withReading } from './merge.ts';
import * as state from './state.ts';

/** What is written at once when the hub tells it; live.ts hears it. */
export const heardFacts = {
  alarm: () => {
    state.alarmChanges.value += 1;
  },
  alarms: () => {
    state.alarmChanges.value += 1;
  },
  farm: () => {
    state.farmChanges.value += 1;
  },
  reading(reading: EventData['reading']) {
    const before = state.today.value;
    if (before) state.today.value = { ...before, places: withReading(before.places, reading) };
    const probes = state.probes.value;
    if (probes) state.probes.value = withProbeReading(probes, reading);
  },
  probe(probe: EventData['probe']) {
    const before = state.probes.value;
    if (before) state.probes.value = withProbe(before, probe);
  },
};
