import { createServer, type Server, type Socket } from 'node:net';
import { Aedes } from 'aedes';
import { onTestFinished } from 'vitest';

/** A broker that is not ours: plain aedes, acknowledging at once, keeping what its clients missed. */
export async function otherBroker(port = 0) {
  const aedes = await Aedes.createBroker();
  const sockets = new Set<Socket>();
  const server: Server = createServer((socket) => {
    sockets.add(socket);
    aedes.handle(socket);
  });
  await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve));
  const bound = server.address() as { port: number };
  const drop = () => {
    for (const socket of sockets) socket.destroy();
  };
  onTestFinished(() => {
    drop();
    server.close();
    aedes.close();
  });
  return { aedes, url: `mqtt://127.0.0.1:${bound.port}`, drop };
}
