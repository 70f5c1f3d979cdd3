import { seededRandom } from '../../src/math/random.ts';
import { Connection, type ConnectionHost, type LinkSettings } from './connection.ts';
import type { VirtualPeripheral } from './peripheral.ts';

/** Opcodes noble uses (Bluetooth Core 5.4, Vol 4, Part E). */
const OP = {
  disconnect: 0x0406,
  reset: 0x0c03,
  readHostSupported: 0x0c6c,
  readVersion: 0x1001,
  readAddress: 0x1009,
  readRssi: 0x1405,
  readBufferSize: 0x2002,
  scanParameters: 0x200b,
  scanEnable: 0x200c,
  createConnection: 0x200d,
  cancelConnection: 0x200e,
};
const STATUS = { unknownConnection: 0x02, exists: 0x0b, disallowed: 0x0c };
const ADVERTISING_MS = 60;

export interface RadioFaults {
  /** Share of connection events lost on the air. */
  loss: number;
  /** As some controllers: no connection while scanning. */
  refusesConnectWhileScanning: boolean;
  /** Disconnect commands that are accepted and never confirmed. */
  ignoresDisconnects: number;
  /** Create-connection commands that are refused as "disallowed". */
  refusesConnects: number;
  /** As some adapters: a question for the signal strength is never answered. */
  tellsNoRssi: boolean;
  /** A connection that is called off is made at that very moment. */
  connectsOnCancel: boolean;
  /** Scanning is switched, but never confirmed. */
  confirmsNoScan: boolean;
}

interface PendingConnect {
  readonly address: string;
  readonly addressBytes: Buffer;
  readonly settings: LinkSettings;
}

const addressBytes = (address: string): Buffer =>
  Buffer.from(address.replaceAll(':', ''), 'hex').reverse();

/** A Bluetooth LE controller in memory with the devices around it. Time is `setTimeout` and `performance.now`. */
export class VirtualRadio {
  readonly peripherals: VirtualPeripheral[] = [];
  readonly faults: RadioFaults = {
    loss: 0,
    refusesConnectWhileScanning: false,
    ignoresDisconnects: 0,
    refusesConnects: 0,
    tellsNoRssi: false,
    connectsOnCancel: false,
    confirmsNoScan: false,
  };
  /** What the host did, for tests: names of scan and connect commands in order. */
  readonly log: string[] = [];
  up = true;
  receive: (packet: Buffer) => void = () => undefined;

  readonly #connections = new Map<number, Connection>();
  readonly #random: () => number;
  readonly #reported = new Set<string>();
  #scanning = false;
  #filterDuplicates = true;
  #pending: PendingConnect | null = null;
  #nextHandle = 0x40;

  constructor(seed = 1) {
    this.#random = seededRandom(seed);
  }

  add(peripheral: VirtualPeripheral): void {
    this.peripherals.push(peripheral);
    this.#advertise(peripheral);
  }

  get scanning(): boolean {
    return this.#scanning;
  }

  get links(): number {
    return this.#connections.size;
  }

  /** What the central asked for. */
  settings(peripheral: VirtualPeripheral): LinkSettings | undefined {
    return [...this.#connections.values()].find((c) => c.peripheral === peripheral)?.settings;
  }

  /** The adapter goes down or comes back, as with a hardware switch: no link is reported lost. */
  power(up: boolean): void {
    this.up = up;
    if (up) return;
    for (const c of this.#connections.values()) {
      c.stop();
      if (c.known) c.peripheral.disconnect();
    }
    this.#connections.clear();
    this.#pending = null;
    this.#scanning = false;
  }

  /** The device ends the link. */
  drop(peripheral: VirtualPeripheral, reason = 0x13): void {
    for (const [handle, c] of this.#connections)
      if (c.peripheral === peripheral) this.#ended(handle, reason);
  }

  /** A packet from the host. */
  write(packet: Buffer): void {
    if (!this.up) return;
    if (packet[0] === 0x02) {
      this.#connections.get(packet.readUInt16LE(1) & 0x0fff)?.take(packet);
      return;
    }
    const opcode = packet.readUInt16LE(1);
    const parameters = packet.subarray(4);
    setTimeout(() => this.#command(opcode, parameters), 1);
  }

  #command(opcode: number, parameters: Buffer): void {
    if (!this.up) return;
    switch (opcode) {
      case OP.readVersion:
        return this.#complete(opcode, [0x0c, 0, 0, 0x0c, 0, 0, 0, 0]);
      case OP.readAddress:
        return this.#complete(opcode, [1, 0, 0, 0, 0, 0xc0]);
      case OP.readHostSupported:
        return this.#complete(opcode, [1, 0]);
      case OP.readBufferSize:
        return this.#complete(opcode, [251, 0, 8]);
      case OP.readRssi:
        if (this.faults.tellsNoRssi) return;
        return this.#complete(opcode, [...parameters.subarray(0, 2), 256 - 60]);
      case OP.scanEnable:
        return this.#scan(parameters);
      case OP.createConnection:
        return this.#create(parameters);
      case OP.cancelConnection:
        return this.#cancel();
      case OP.disconnect:
        return this.#disconnect(parameters.readUInt16LE(0));
      default:
        return this.#complete(opcode, []);
    }
  }

  #complete(opcode: number, result: readonly number[], status = 0): void {
    const tail = [1, opcode & 0xff, opcode >> 8, status, ...result];
    this.receive(Buffer.from([0x04, 0x0e, tail.length, ...tail]));
  }

  #status(opcode: number, status: number): void {
    this.receive(Buffer.from([0x04, 0x0f, 4, status, 1, opcode & 0xff, opcode >> 8]));
  }

  #scan(parameters: Buffer): void {
    this.#scanning = parameters[0] === 1;
    this.#filterDuplicates = parameters[1] === 1;
    this.#reported.clear();
    this.log.push(this.#scanning ? 'scan' : 'stop');
    if (!this.faults.confirmsNoScan) this.#complete(OP.scanEnable, []);
  }

  #create(p: Buffer): void {
    const bytes = p.subarray(6, 12);
    const address = Buffer.from(bytes).reverse().toString('hex').match(/../g)?.join(':') ?? '';
    this.log.push(`connect ${address}`);
    const refusal = this.#refusal(address);
    this.#status(OP.createConnection, refusal);
    if (refusal !== 0) return;
    this.#pending = {
      address,
      addressBytes: Buffer.from(bytes),
      settings: {
        intervalMs: p.readUInt16LE(15) * 1.25,
        latency: p.readUInt16LE(17),
        supervisionMs: p.readUInt16LE(19) * 10,
      },
    };
  }

  #refusal(address: string): number {
    const linked = [...this.#connections.values()].some((c) => c.peripheral.address === address);
    if (linked) return STATUS.exists;
    if (this.faults.refusesConnects > 0) {
      this.faults.refusesConnects -= 1;
      return STATUS.disallowed;
    }
    const collides = this.#scanning && this.faults.refusesConnectWhileScanning;
    return this.#pending || collides ? STATUS.disallowed : 0;
  }

  #cancel(): void {
    this.log.push('cancel');
    const pending = this.#pending;
    const peer = this.peripherals.find((p) => p.address === pending?.address);
    this.#pending = null;
    if (pending && peer && this.faults.connectsOnCancel) {
      this.#link(peer, pending);
      return this.#complete(OP.cancelConnection, [], STATUS.disallowed);
    }
    this.#complete(OP.cancelConnection, [], pending ? 0 : STATUS.disallowed);
    if (pending) setTimeout(() => this.#connected(STATUS.unknownConnection, 0, pending), 5);
  }

  /** LE Connection Complete. */
  #connected(status: number, handle: number, to: PendingConnect): void {
    const e = Buffer.alloc(22);
    e.set([0x04, 0x3e, 19, 0x01, status], 0);
    e.writeUInt16LE(handle, 5);
    e.set([0, 1], 7);
    to.addressBytes.copy(e, 9);
    e.writeUInt16LE(to.settings.intervalMs / 1.25, 15);
    e.writeUInt16LE(to.settings.supervisionMs / 10, 19);
    this.receive(e);
  }

  #disconnect(handle: number): void {
    this.#status(OP.disconnect, this.#connections.has(handle) ? 0 : STATUS.unknownConnection);
    if (this.faults.ignoresDisconnects > 0) {
      this.faults.ignoresDisconnects -= 1;
      return;
    }
    // One that does not answer is given up at the end of the supervision time, not before.
    if (this.#connections.get(handle)?.alive) setTimeout(() => this.#ended(handle, 0x16), 10);
  }

  #ended(handle: number, reason: number): void {
    const connection = this.#connections.get(handle);
    if (!connection) return;
    connection.stop();
    if (connection.known) connection.peripheral.disconnect();
    this.#connections.delete(handle);
    this.receive(Buffer.from([0x04, 0x05, 4, 0, handle & 0xff, handle >> 8, reason]));
  }

  #advertise(peripheral: VirtualPeripheral): void {
    setTimeout(
      () => {
        if (this.up && peripheral.advertises) this.#heard(peripheral);
        this.#advertise(peripheral);
      },
      ADVERTISING_MS + 10 * this.#random(),
    );
  }

  #heard(peripheral: VirtualPeripheral): void {
    const pending = this.#pending;
    if (pending?.address === peripheral.address) {
      if (peripheral.ignoresConnects > 0) return;
      this.#pending = null;
      this.#link(peripheral, pending);
      return;
    }
    const known = this.#filterDuplicates && this.#reported.has(peripheral.address);
    if (!this.#scanning || known) return;
    this.#reported.add(peripheral.address);
    this.#report(0x00, peripheral, peripheral.spec.advertisement);
    this.#report(0x04, peripheral, peripheral.spec.scanResponse);
  }

  #report(type: number, peripheral: VirtualPeripheral, data: Buffer): void {
    const body = [1, type, 1, ...addressBytes(peripheral.address), data.length, ...data];
    const event = [0x02, ...body, 256 + peripheral.rssi];
    this.receive(Buffer.from([0x04, 0x3e, event.length, ...event]));
  }

  #link(peripheral: VirtualPeripheral, pending: PendingConnect): void {
    const handle = this.#nextHandle++;
    const host: ConnectionHost = {
      now: () => performance.now(),
      lost: () => this.#random() < this.faults.loss,
      toHost: (packet) => this.receive(packet),
      ended: (h, reason) => this.#ended(h, reason),
    };
    peripheral.connect();
    this.#connections.set(handle, new Connection(handle, peripheral, pending.settings, host));
    this.#connected(0, handle, pending);
  }
}
