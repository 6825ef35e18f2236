// What lies in the demonstration's cool room when its story begins: entered as a person would, over
// HTTP. Weights and times are invented.

const HOUR = 3_600_000;

type Put = {
  readonly crop: string;
  readonly kg: number;
  readonly from: string | null;
  /** Hours before the story begins. */
  readonly harvested: number | null;
  readonly stored: number;
  readonly cooled: string | null;
  /** kg sold of it since. */
  readonly sold?: number;
};

const lots: readonly Put[] = [
  {
    crop: 'salad-leaves',
    kg: 9,
    from: 'sun-house',
    harvested: 79,
    stored: 76,
    cooled: 'fan',
    sold: 5.5,
  },
  { crop: 'pea-shoots', kg: 6, from: 'hollow-house', harvested: 31, stored: 29, cooled: 'room' },
  { crop: 'radish-shoots', kg: 2.5, from: null, harvested: null, stored: 28, cooled: null },
  { crop: 'salad-leaves', kg: 12, from: 'sun-house', harvested: 8, stored: 6, cooled: 'fan' },
  // What lay there before and is sold: the weeks the room's hold-over was learned in.
  ...[650, 480, 312, 170].map(
    (stored): Put => ({
      ...{ crop: 'salad-leaves', kg: 26, from: 'sun-house', cooled: 'fan' },
      ...{ harvested: stored + 3, stored, sold: 26 },
    }),
  ),
];

/** A check of one of its probes in melting ice, six weeks before; the other was never checked. */
const check = { probe: 'cool-air', hours: 6 * 7 * 24, reading: 0.1 };

async function send<Answer>(url: string, method: 'POST' | 'PATCH', body: object): Promise<Answer> {
  const response = await fetch(url, {
    method,
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  if (!response.ok) throw new Error(`${url} answered ${response.status}: ${await response.text()}`);
  return (await response.json()) as Answer;
}

/** Puts the lots away; `page` is the hub's address without a stroke at its end. */
export async function enterDemoLots(page: string, start: number): Promise<void> {
  const ago = (hours: number | null) =>
    hours === null ? null : new Date(start - hours * HOUR).toISOString();
  for (const { harvested, stored, sold, ...rest } of lots) {
    const { id } = await send<{ id: string }>(`${page}/api/lots`, 'POST', {
      ...rest,
      place: 'cool-room',
      harvestedAt: ago(harvested),
      storedAt: ago(stored),
    });
    if (sold !== undefined)
      await send(`${page}/api/lots/${id}`, 'PATCH', {
        take: { how: 'sold', kg: sold, at: ago(Math.max(1, stored - 20)), to: 'market' },
      });
  }
  await send(`${page}/api/probes/${check.probe}/checks`, 'POST', {
    ...{ at: ago(check.hours), by: 'Wren (invented)', apply: false },
    points: [{ reading: check.reading, reference: 0 }],
  });
  await send(`${page}/api/cool-rooms/cool-room/actions`, 'POST', {
    ...{ at: ago(1), by: 'Wren (invented)', core: null },
    ...{ saw: 'Generator stopped.', did: 'Called for fuel; door kept shut.' },
  });
}
