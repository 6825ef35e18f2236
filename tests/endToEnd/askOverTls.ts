import { request } from 'node:https';

/** As fetch, of a hub whose certificate nobody has signed but itself: ours, on this machine. */
export function askOverTls(
  url: URL,
  { method = 'GET', headers, body }: { method?: string; headers: object; body?: string },
): Promise<Response> {
  return new Promise((resolve, reject) => {
    const asked = request(
      url,
      { method, headers: { ...headers }, rejectUnauthorized: false },
      (reply) => {
        const parts: Buffer[] = [];
        reply.on('data', (part) => parts.push(part));
        reply.on('end', () => {
          const given = new Headers();
          for (const [name, value] of Object.entries(reply.headers))
            for (const one of [value ?? []].flat()) given.append(name, one);
          const status = reply.statusCode ?? 0;
          resolve(new Response(Buffer.concat(parts), { status, headers: given }));
        });
      },
    );
    asked.on('error', reject);
    asked.end(body);
  });
}
