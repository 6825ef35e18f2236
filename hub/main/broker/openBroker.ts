import { type Broker, connectExisting, type Receive, startEmbedded } from '../../broker/index.ts';
import { filterOf } from '../../intake/index.ts';
import { newSecret } from '../../passwords.ts';
import type { Settings } from '../../settings.ts';
import type { Store } from '../../store/index.ts';
import type { Core } from '../core.ts';
import { keptSecret } from '../keeping/keptSecret.ts';
import { readText } from '../verbs/readText.ts';
import { admission, settingsOf } from './admission.ts';

/** The broker inside, or the one that is there already, as the settings ask. */
export async function openBroker(
  settings: Settings<'start'>,
  store: Store,
  core: Core,
  onConnect: () => void,
): Promise<Broker> {
  const receive: Receive = (message, acknowledge) => core.receive(message, acknowledge);
  const filters = () => ['garden/#', ...core.farm().mappings.map(filterOf)];
  const { broker: url, ca, share, mqtts, cert, key } = settings;
  const broker = url
    ? await connectExisting({
        url,
        filters: filters(),
        clientId: keptSecret(store, 'hub-id', () => `dewpost-${newSecret(2)}`),
        receive,
        onConnect,
        ...(ca === undefined ? {} : { ca: readText(ca) }),
        ...(share === undefined ? {} : { share }),
      })
    : await startEmbedded({
        ...settings.mqtt,
        receive,
        refuse: core.refuse,
        ...admission(store, settings.open, () => core.farm().mappings),
        ...(mqtts && cert !== undefined && key !== undefined
          ? { secure: { ...mqtts, cert: readText(cert), key: readText(key) } }
          : {}),
      });
  core.feed.on('farm', () => broker.listen(filters()));
  return broker;
}

/** Retained for each probe of the farm file: how often it is wanted to report, in seconds. */
export function sayProbeSettings(
  core: Core,
  publish: (topic: string, payload: string, options: { retain: boolean }) => Promise<void>,
) {
  for (const { id } of core.farm().file.probes) {
    const every = (core.store.probes.get(id)?.everyMs ?? 0) / 1000;
    if (every > 0) void publish(settingsOf(id), JSON.stringify({ every }), { retain: true });
  }
}
