// The outer shape of MQTT packets (OASIS MQTT 3.1.1, section 2.2): one byte of type and flags, then
// the length of the rest in one to four bytes of seven bits each.

export const CONNECT = 1;
export const PUBLISH = 3;

/** What begins a packet. */
export type Opening = {
  readonly type: number;
  readonly flags: number;
  /** Bytes that follow. */
  readonly length: number;
  /** Bytes of the opening itself. */
  readonly size: number;
};

/**
 * The opening at the start of these bytes; null while it is not all there.
 *
 * @throws Error when no packet begins so.
 */
export function readOpening(bytes: Uint8Array): Opening | null {
  const first = bytes[0];
  if (first === undefined) return null;
  const type = first >> 4;
  if (type === 0 || type === 15)
    throw new Error(`Expected an MQTT packet of type 1 to 14, got ${type}`);
  let length = 0;
  for (let i = 0; i < 4; i++) {
    const byte = bytes[1 + i];
    if (byte === undefined) return null;
    length += (byte & 0x7f) * 2 ** (7 * i);
    if (byte < 0x80) return { type, flags: first & 0x0f, length, size: 2 + i };
  }
  throw new Error('Expected a packet length of at most four bytes, got more');
}

/** The bytes of an opening. */
export function writeOpening({ type, flags, length }: Omit<Opening, 'size'>): Buffer {
  const bytes = [(type << 4) | flags];
  let rest = length;
  do {
    const byte = rest % 128;
    rest = Math.floor(rest / 128);
    bytes.push(rest > 0 ? byte | 0x80 : byte);
  } while (rest > 0);
  return Buffer.from(bytes);
}

/** Bytes of a PUBLISH before its message: topic, and a packet id above QoS 0 (section 3.3.2). */
export function headLength(start: Uint8Array, flags: number): number | null {
  const [high, low] = start;
  if (high === undefined || low === undefined) return null;
  return 2 + high * 256 + low + (flags & 0b0110 ? 2 : 0);
}
