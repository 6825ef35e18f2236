import { connectAsync } from 'mqtt';

const MINUTE = 60_000;

/**
 * The cool room's door stands open: its contact says so for a quarter of an hour, and the air is
 * warm. Sent to any broker, by readings that carry their time. @param now the farm's.
 */
export async function openDoor(port: number, now: number): Promise<void> {
  const probe = await connectAsync(`mqtt://127.0.0.1:${port}`);
  const pack = (n: string, ago: number, value: object) => ({
    n,
    ...value,
    t: (now - ago * MINUTE) / 1000,
  });
  const warm = [30, 25, 20, 15, 10, 5, 1].map((ago, i) =>
    pack('cold:temperature', ago, { v: 3 + 0.5 * i }),
  );
  const door = [30, 20, 15, 10, 5, 1].map((ago) => pack('unit:door', ago, { vb: ago <= 15 }));
  await probe.publishAsync('garden/cold', JSON.stringify(warm), { qos: 1 });
  await probe.publishAsync('garden/unit', JSON.stringify(door), { qos: 1 });
  await probe.endAsync();
}
