import { type AddressInfo, type Socket, connect, createServer } from 'node:net';

/** A way to a service that can be stopped without closing anything, as when the service's process stands still. */
export async function proxyTo(port: number) {
  let target = port;
  const open = new Set<Socket>();
  let frozen = false;
  const server = createServer((from) => {
    const to = connect(target, '127.0.0.1');
    for (const [one, other] of [
      [from, to],
      [to, from],
    ] as const) {
      open.add(one);
      one.on('data', (data) => other.write(data));
      one.on('error', () => other.destroy());
      one.on('close', () => {
        open.delete(one);
        other.destroy();
      });
      if (frozen) one.pause();
    }
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port: own } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${own}/`,
    /** Nothing passes any more; every connection stays open. */
    freeze: () => {
      frozen = true;
      for (const socket of open) socket.pause();
    },
    thaw: () => {
      frozen = false;
      for (const socket of open) socket.resume();
    },
    /** New connections go there. */
    aim: (next: number) => void (target = next),
    end: () => {
      for (const socket of open) socket.destroy();
      server.close();
    },
  };
}
