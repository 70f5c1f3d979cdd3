import type { VirtualPeripheral } from './peripheral.ts';

const ATT_CID = 4;
const PER_EVENT = 6;
const DATA_LENGTH = 251;

export interface LinkSettings {
  readonly intervalMs: number;
  /** Connection events that the sensor may sleep through. */
  readonly latency: number;
  readonly supervisionMs: number;
}

export interface ConnectionHost {
  readonly now: () => number;
  /** Is this connection event lost on the air? */
  readonly lost: () => boolean;
  readonly toHost: (packet: Buffer) => void;
  readonly ended: (handle: number, reason: number) => void;
}

/** One link: connection events at fixed times, requests answered in the event after the one that carried them. */
export class Connection {
  readonly handle: number;
  readonly peripheral: VirtualPeripheral;
  readonly settings: LinkSettings;
  readonly #host: ConnectionHost;
  readonly #boot: number;
  readonly #inbox: Buffer[] = [];
  readonly #answers: { readonly pdu: Buffer; readonly fromMs: number }[] = [];
  #assembling: Buffer[] = [];
  #sent = 0;
  #nextMs: number;
  #heardMs: number;
  #timer: NodeJS.Timeout | null = null;

  constructor(
    handle: number,
    peripheral: VirtualPeripheral,
    settings: LinkSettings,
    host: ConnectionHost,
  ) {
    this.handle = handle;
    this.peripheral = peripheral;
    this.settings = settings;
    this.#host = host;
    this.#boot = peripheral.boots;
    this.#heardMs = host.now();
    this.#nextMs = host.now() + settings.intervalMs;
    this.#schedule();
  }

  /** An ACL packet from the host. */
  take(packet: Buffer): void {
    const continues = ((packet.readUInt16LE(1) >> 12) & 3) === 1;
    if (!continues) this.#assembling = [];
    this.#assembling.push(packet.subarray(5));
    this.#sent += 1;
    const whole = Buffer.concat(this.#assembling);
    if (whole.length < 4 + whole.readUInt16LE(0)) return;
    if (whole.readUInt16LE(2) === ATT_CID) this.#inbox.push(Buffer.from(whole.subarray(4)));
  }

  /** The device has not been switched off and on since. */
  get known(): boolean {
    return this.peripheral.boots === this.#boot;
  }

  get alive(): boolean {
    return this.peripheral.answers && this.known;
  }

  stop(): void {
    if (this.#timer) clearTimeout(this.#timer);
    this.#timer = null;
  }

  #schedule(): void {
    this.#timer = setTimeout(() => this.#event(), Math.max(0, this.#nextMs - this.#host.now()));
  }

  #event(): void {
    const now = this.#host.now();
    this.#nextMs += this.settings.intervalMs;
    if (this.alive) this.peripheral.produce(now);
    if (this.alive && !this.#host.lost()) this.#exchange(now);
    if (now - this.#heardMs > this.settings.supervisionMs) this.#host.ended(this.handle, 0x08);
    else if (this.#timer) this.#schedule();
  }

  #exchange(now: number): void {
    this.#heardMs = now;
    while ((this.#answers[0]?.fromMs ?? Infinity) <= now)
      this.#deliver(this.#answers.shift()?.pdu ?? Buffer.alloc(0));
    for (const pdu of this.peripheral.outbox.splice(0, PER_EVENT)) this.#deliver(pdu);
    for (const request of this.#inbox.splice(0)) {
      const pdu = this.peripheral.gatt.respond(request);
      if (pdu) this.#answers.push({ pdu, fromMs: now + this.peripheral.answersAfterMs });
    }
    if (this.#sent > 0) this.#completed();
  }

  /** Number Of Completed Packets. */
  #completed(): void {
    const event = Buffer.from([0x04, 0x13, 5, 1, 0, 0, 0, 0]);
    event.writeUInt16LE(this.handle, 4);
    event.writeUInt16LE(this.#sent, 6);
    this.#sent = 0;
    this.#host.toHost(event);
  }

  #deliver(pdu: Buffer): void {
    const head = Buffer.alloc(4);
    head.writeUInt16LE(pdu.length, 0);
    head.writeUInt16LE(ATT_CID, 2);
    const frame = Buffer.concat([head, pdu]);
    for (let at = 0; at < frame.length; at += DATA_LENGTH) {
      const part = frame.subarray(at, at + DATA_LENGTH);
      const packet = Buffer.alloc(5 + part.length);
      packet.writeUInt8(0x02, 0);
      packet.writeUInt16LE(this.handle | ((at === 0 ? 2 : 1) << 12), 1);
      packet.writeUInt16LE(part.length, 3);
      part.copy(packet, 5);
      this.#host.toHost(packet);
    }
  }
}
