import type { Series } from '../../hub/contract/index.ts';
import type { HubProcess } from './hubProcess.ts';

const HOUR = 3_600_000; // ms
const iso = (t: number) => new Date(t).toISOString();

/** What /api/series has of a place's last hours: [ms since 1970, value] without the gaps. */
export async function seriesOf(hub: HubProcess, place: string, quantity: string, now: number) {
  const query = `place=${place}&quantity=${quantity}&from=${iso(now - 6 * HOUR)}&to=${iso(now + HOUR)}`;
  const { t, mean } = await hub.get<Series>(`/api/series?${query}&points=5000`);
  return t.map((at, i) => [at, mean[i] ?? null] as const).filter(([, value]) => value !== null);
}
