import { EventEmitter } from 'node:events';
import Module, { createRequire } from 'node:module';
import type { VirtualRadio } from './controller.ts';

const SOCKET = '@abandonware/bluetooth-hci-socket';
const require = createRequire(import.meta.url);

/** `null` stands for a machine without any Bluetooth. */
let current: VirtualRadio | null = null;

let generation = 0;

/** As when the process dies that opened them. */
export function killSockets(): void {
  generation += 1;
  if (current) current.receive = () => undefined;
}

/** The in-memory stand-in for the HCI socket, the only part of noble's stack that is replaced. */
class VirtualHciSocket extends EventEmitter {
  readonly #radio: VirtualRadio;
  readonly #generation = generation;

  constructor() {
    super();
    if (!current) throw Object.assign(new Error('No such device'), { code: 'ENODEV' });
    this.#radio = current;
    this.#radio.receive = (packet) => this.emit('data', packet);
  }

  bindRaw(): number {
    return 0;
  }
  start(): void {
    // Packets come as soon as the radio has some.
  }
  stop(): void {
    this.#radio.receive = () => undefined;
  }
  isDevUp(): boolean {
    return this.#radio.up;
  }
  setFilter(): void {
    // Everything is let through.
  }
  write(packet: Buffer): void {
    if (this.#generation === generation) this.#radio.write(packet);
  }
}

type Load = (request: string, ...rest: unknown[]) => unknown;
const loader = Module as unknown as { _load: Load };
const load = loader._load;
loader._load = (request, ...rest) =>
  request === SOCKET ? VirtualHciSocket : load.call(Module, request, ...rest);

export function useRadio(radio: VirtualRadio | null): void {
  current = radio;
}

export const nobleIsInstalled = (): boolean => {
  try {
    require.resolve('@abandonware/noble');
    return true;
  } catch {
    return false;
  }
};

/** A noble of its own, with its real HCI, GAP and GATT code, on the virtual radio. */
export function freshNoble(): unknown {
  const create = require('@abandonware/noble/with-custom-binding') as (o: object) => unknown;
  return create({});
}
