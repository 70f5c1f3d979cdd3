import type { IncomingHttpHeaders } from 'node:http';
import type { Socket } from 'node:net';

/** The name that a browser uses for the end of a connection that is ours: `192.168.1.5:7711`, `[fd00::5]:7711`. */
function ownHost({ localAddress = '', localPort = 0 }: Socket): string {
  const address = localAddress.includes(':') ? `[${localAddress}]` : localAddress;
  return `${address}:${localPort}`;
}

/** A name that merely points here (DNS rebinding) is not ours. */
export const isOwnHost = ({ host }: IncomingHttpHeaders, socket: Socket): boolean =>
  host === ownHost(socket);

/** A browser says where a page came from with everything that is more than reading. */
export const isOwnOrigin = ({ origin }: IncomingHttpHeaders, socket: Socket): boolean =>
  origin === `http://${ownHost(socket)}`;
