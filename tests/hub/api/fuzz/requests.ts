import { oddBody, oddText } from './odd.ts';
import { type Operation, rightValue, spoilt } from './operations.ts';
import type { Random } from './random.ts';

export type Asked = {
  readonly method: string;
  readonly url: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string | undefined;
};

const METHODS = ['GET', 'POST', 'PUT', 'PATCH', 'DELETE', 'HEAD', 'OPTIONS', 'TRACE', 'PROPFIND'];
const TYPES = [
  'application/json',
  'application/json; charset=utf-8',
  'application/json;charset=utf-16',
  'APPLICATION/JSON',
  'text/plain',
  'application/x-www-form-urlencoded',
  'multipart/form-data; boundary=x',
  'application/xml',
  'application/json, text/plain',
  'x',
];

/** Text for an address: as a browser writes it, or as it is where that can be sent at all. */
const inAddress = (text: string, random: Random) => {
  if (random.chance(0.15)) return text.replace(/[^\x21-\x7e]/g, '');
  try {
    return encodeURIComponent(text);
  } catch {
    return '%ED%A0%80'; // half of a pair of UTF-16, as bytes that are no UTF-8
  }
};

function addressOf(operation: Operation, random: Random): string {
  const value = ({ schema, name }: { schema: object; name: string }) =>
    random.chance(0.5) ? String(rightValue(schema, name, random)) : oddText(random);
  const path = operation.path.replace(/\{(\w+)\}/g, (_, name: string) => {
    const param = operation.params.find((one) => one.name === name);
    return inAddress(value(param ?? { schema: {}, name }), random);
  });
  const pairs: string[] = [];
  for (const param of operation.params) {
    if (param.in !== 'query' || random.chance(0.1)) continue;
    const times = random.chance(0.05) ? 2 : 1;
    for (let i = 0; i < times; i++) pairs.push(`${param.name}=${inAddress(value(param), random)}`);
  }
  if (random.chance(0.05)) pairs.push(`${inAddress(oddText(random), random)}[]=1`);
  if (random.chance(0.01)) pairs.push(`x=${'y'.repeat(random.pick([3000, 12_000, 20_000]))}`);
  return pairs.length > 0 ? `${path}?${pairs.join('&')}` : path;
}

/** Header values may hold visible ASCII only (RFC 9110, section 5.5); others are sent raw elsewhere. */
const inHeader = (text: string) => text.replace(/[^\x20-\x7e]/g, '').slice(0, 4000);

/** One request, right in most of its parts and wrong in some. */
export function makeRequest(
  operations: readonly Operation[],
  random: Random,
  cookies: readonly string[],
): Asked {
  const operation = random.pick(operations);
  const method = random.chance(0.9) ? operation.method : random.pick(METHODS);
  const headers: Record<string, string> = {};
  let body: string | undefined;
  if (method !== 'GET' && method !== 'HEAD' && method !== 'TRACE') {
    const right = operation.body ? rightValue(operation.body, '', random) : {};
    const text = JSON.stringify(random.chance(0.5) ? spoilt(right, random) : right);
    body = random.chance(0.2) ? oddBody(random) : text;
    if (random.chance(0.05)) body = body.slice(0, random.below(body.length + 1));
    if (random.chance(0.95))
      headers['content-type'] = random.chance(0.9) ? 'application/json' : random.pick(TYPES);
  }
  const cookie = random.pick(cookies);
  // Who signs out, or changes the password, would have nothing to send after that.
  if (cookie !== '' && !/sign-out|\/password/.test(operation.path)) headers.cookie = cookie;
  if (random.chance(0.05)) headers.cookie = `dewpost=${inHeader(oddText(random))}`;
  if (random.chance(0.02)) headers.origin = inHeader(oddText(random)) || 'null';
  if (random.chance(0.02)) headers['sec-fetch-site'] = inHeader(oddText(random)) || 'cross-site';
  if (random.chance(0.02)) headers.host = inHeader(oddText(random)).trim() || 'x';
  if (random.chance(0.02)) headers.accept = inHeader(oddText(random));
  if (random.chance(0.02)) headers['accept-encoding'] = 'gzip;q=NaN, *;q=2';
  if (random.chance(0.02)) headers.range = 'bytes=0-0,-1,9999999-';
  if (random.chance(0.02)) headers['x-forwarded-for'] = inHeader(oddText(random));
  if (random.chance(0.02)) headers['if-none-match'] = inHeader(oddText(random));
  return { method, url: addressOf(operation, random), headers, body };
}
