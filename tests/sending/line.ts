import { type AddressInfo, type Socket, connect, createServer } from 'node:net';

/** A line to a server on this computer that can be cut. */
export interface Line {
  readonly url: string;
  /** Nobody gets through, until `mend`. */
  cut(): void;
  mend(): void;
  /** Once so many bytes have been sent to the server, the connection breaks; half of its last piece arrives. */
  cutAfter(bytes: number): void;
  close(): void;
}

export async function lineTo(port: number): Promise<Line> {
  const open = new Set<Socket>();
  let up = true;
  let left = Infinity;
  const drop = (): void => open.forEach((socket) => socket.destroy());
  const pass = (bytes: Buffer, hub: Socket, socket: Socket): void => {
    left -= bytes.length;
    if (left > 0) return void hub.write(bytes);
    left = Infinity;
    hub.write(bytes.subarray(0, bytes.length / 2), () => socket.destroy());
  };
  const server = createServer((socket) => {
    open.add(socket);
    socket.on('error', () => undefined);
    if (!up) return void socket.destroy();
    const hub = connect(port, '127.0.0.1');
    hub.on('error', () => socket.destroy());
    hub.on('close', () => socket.destroy());
    hub.on('data', (bytes) => socket.write(bytes));
    socket.on('close', () => {
      open.delete(socket);
      hub.destroy();
    });
    socket.on('data', (bytes) => pass(bytes, hub, socket));
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    cut: () => {
      up = false;
      drop();
    },
    mend: () => (up = true),
    cutAfter: (bytes) => (left = bytes),
    close: () => {
      drop();
      server.close();
    },
  };
}
