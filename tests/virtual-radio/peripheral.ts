import { GattServer, type ServiceSpec } from './gattServer.ts';

export interface PeripheralSpec {
  /** Like `c0:00:00:00:00:01`. */
  readonly address: string;
  readonly advertisement: Buffer;
  readonly scanResponse: Buffer;
  readonly services: readonly ServiceSpec[];
  readonly maxMtu: number;
  /** Notifications the device can hold while the link is busy; more are dropped by the device. */
  readonly buffer?: number;
}

export const adStructure = (type: number, data: Buffer): Buffer =>
  Buffer.concat([Buffer.from([data.length + 1, type]), data]);

/** A device in the room. What it measures is given by `produce`, called as time goes on. */
export class VirtualPeripheral {
  readonly spec: PeripheralSpec;
  readonly gatt: GattServer;
  powered = true;
  inRange = true;
  connected = false;
  /** How often it was switched on; a link does not outlive that. */
  boots = 1;
  rssi = -60;
  /** Connection requests that it will not answer, for faults. */
  ignoresConnects = 0;
  /** How long it thinks over each request. */
  answersAfterMs = 0;
  droppedByDevice = 0;
  subscriptions = 0;
  /** Notifications waiting for a connection event. */
  readonly outbox: Buffer[] = [];
  produce: (nowMs: number) => void = () => undefined;
  onPower: (on: boolean) => void = () => undefined;

  constructor(spec: PeripheralSpec) {
    this.spec = spec;
    this.gatt = new GattServer(spec.services, spec.maxMtu);
  }

  get address(): string {
    return this.spec.address;
  }

  get answers(): boolean {
    return this.powered && this.inRange;
  }

  get advertises(): boolean {
    return this.answers && !this.connected;
  }

  connect(): void {
    this.connected = true;
    this.gatt.reset();
    this.outbox.length = 0;
  }

  disconnect(): void {
    this.connected = false;
    this.gatt.reset();
    this.outbox.length = 0;
  }

  /** Switching on is a restart of the device: it knows nothing of a link that the other side still holds open. */
  power(on: boolean): void {
    if (on === this.powered) return;
    this.powered = on;
    if (on) this.boots += 1;
    this.disconnect();
    this.onPower(on);
  }

  notify(uuid: string, value: Uint8Array): void {
    const handle = this.gatt.subscribed(uuid);
    if (handle === null || !this.connected) return;
    if (this.outbox.length >= (this.spec.buffer ?? 60)) {
      this.droppedByDevice += 1;
      return;
    }
    const head = Buffer.from([0x1b, handle & 0xff, handle >> 8]);
    this.outbox.push(Buffer.concat([head, value.subarray(0, this.gatt.mtu - 3)]));
  }
}
