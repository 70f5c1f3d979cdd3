/** A GATT table and the ATT requests a central makes on it (Bluetooth Core 5.4, Vol 3, Part F and G). */
export interface CharacteristicSpec {
  readonly uuid: string;
  readonly notify?: boolean;
  readonly read?: () => Uint8Array;
  readonly write?: (value: Buffer) => void;
  /** It takes writes only so: with an answer, or without one. Default: both. */
  readonly writtenBy?: 'request' | 'command';
}

export interface ServiceSpec {
  readonly uuid: string;
  readonly characteristics: readonly CharacteristicSpec[];
}

interface Attribute {
  readonly handle: number;
  readonly type: string;
  /** Last handle of the group, for services. */
  end: number;
  readonly spec: CharacteristicSpec | null;
  value: Buffer;
}

const PRIMARY = '2800';
const CHARACTERISTIC = '2803';
const CCCD = '2902';
const ERROR = { invalidHandle: 0x01, notFound: 0x0a, unsupported: 0x06 };

/** Over the air UUIDs run backwards. */
export const uuidBytes = (uuid: string): Buffer => Buffer.from(uuid, 'hex').reverse();
const u16 = (value: number): Buffer => Buffer.from([value & 0xff, value >> 8]);

const WRITES = { command: 0x04, request: 0x08, both: 0x0c };
const properties = (c: CharacteristicSpec): number =>
  (c.read ? 0x02 : 0) | (c.write ? WRITES[c.writtenBy ?? 'both'] : 0) | (c.notify ? 0x10 : 0);

export class GattServer {
  readonly #attributes: Attribute[] = [];
  readonly #maxMtu: number;
  mtu = 23;

  constructor(services: readonly ServiceSpec[], maxMtu: number) {
    this.#maxMtu = maxMtu;
    for (const service of services) this.#addService(service);
  }

  /** A fresh connection: default MTU, nothing subscribed. */
  reset(): void {
    this.mtu = 23;
    for (const a of this.#attributes) if (a.type === CCCD) a.value = u16(0);
  }

  /** Handle to notify on, or `null` where nobody subscribed. */
  subscribed(uuid: string): number | null {
    const at = this.#attributes.findIndex((a) => a.spec?.uuid === uuid && a.type === uuid);
    const cccd = this.#attributes[at + 1];
    return at >= 0 && cccd?.type === CCCD && cccd.value[0] === 1 ? at + 1 : null;
  }

  respond(request: Buffer): Buffer | null {
    const op = request[0] ?? 0;
    switch (op) {
      case 0x02:
        return this.#exchangeMtu(request.readUInt16LE(1));
      case 0x04:
        return this.#findInformation(request);
      case 0x08:
        return this.#readByType(request);
      case 0x10:
        return this.#readByGroup(request);
      case 0x0a:
        return this.#read(op, request.readUInt16LE(1), 0);
      case 0x0c:
        return this.#read(op, request.readUInt16LE(1), request.readUInt16LE(3));
      case 0x12:
        return this.#write(request, 'request')
          ? Buffer.from([0x13])
          : this.#error(request, ERROR.invalidHandle);
      case 0x52:
        this.#write(request, 'command');
        return null;
      case 0x1e:
        return null;
      default:
        return this.#error(request, ERROR.unsupported);
    }
  }

  #add(type: string, value: Buffer, spec: CharacteristicSpec | null = null): Attribute {
    const handle = this.#attributes.length + 1;
    const attribute = { handle, type, end: handle, spec, value };
    this.#attributes.push(attribute);
    return attribute;
  }

  #addService(service: ServiceSpec): void {
    const head = this.#add(PRIMARY, uuidBytes(service.uuid));
    for (const c of service.characteristics) {
      const valueHandle = this.#attributes.length + 2;
      const declaration = [Buffer.from([properties(c)]), u16(valueHandle), uuidBytes(c.uuid)];
      this.#add(CHARACTERISTIC, Buffer.concat(declaration));
      this.#add(c.uuid, Buffer.alloc(0), c);
      if (c.notify) this.#add(CCCD, u16(0), c);
    }
    head.end = this.#attributes.length;
  }

  #error(request: Buffer, code: number): Buffer {
    return Buffer.from([0x01, request[0] ?? 0, request[1] ?? 0, request[2] ?? 0, code]);
  }

  #exchangeMtu(wanted: number): Buffer {
    this.mtu = Math.max(23, Math.min(wanted, this.#maxMtu));
    return Buffer.concat([Buffer.from([0x03]), u16(this.#maxMtu)]);
  }

  /** Entries of one answer must have the same length and fit. */
  #list(request: Buffer, op: number, entries: readonly Buffer[]): Buffer {
    const length = entries[0]?.length;
    if (length === undefined) return this.#error(request, ERROR.notFound);
    const alike = entries.findIndex((e) => e.length !== length);
    const room = Math.floor((this.mtu - 2) / length);
    const fitting = entries.slice(0, Math.min(alike < 0 ? entries.length : alike, room));
    return Buffer.concat([Buffer.from([op, length]), ...fitting]);
  }

  #range(request: Buffer): Attribute[] {
    const from = request.readUInt16LE(1);
    const to = request.readUInt16LE(3);
    return this.#attributes.filter((a) => a.handle >= from && a.handle <= to);
  }

  #readByGroup(request: Buffer): Buffer {
    const services = this.#range(request).filter((a) => a.type === PRIMARY);
    const entries = services.map((a) => Buffer.concat([u16(a.handle), u16(a.end), a.value]));
    return this.#list(request, 0x11, entries);
  }

  #readByType(request: Buffer): Buffer {
    const type = request.readUInt16LE(5).toString(16);
    const found = this.#range(request).filter((a) => a.type === type);
    return this.#list(
      request,
      0x09,
      found.map((a) => Buffer.concat([u16(a.handle), a.value])),
    );
  }

  #findInformation(request: Buffer): Buffer {
    const entries = this.#range(request).map((a) =>
      Buffer.concat([u16(a.handle), uuidBytes(a.type)]),
    );
    const list = this.#list(request, 0x05, entries);
    if (list[0] === 0x05) list[1] = entries[0]?.length === 4 ? 1 : 2;
    return list;
  }

  #read(op: number, handle: number, offset: number): Buffer {
    const attribute = this.#attributes[handle - 1];
    const request = Buffer.concat([Buffer.from([op]), u16(handle)]);
    if (!attribute) return this.#error(request, ERROR.invalidHandle);
    const value = attribute.type === CCCD ? attribute.value : attribute.spec?.read?.();
    const part = Buffer.from(value ?? attribute.value).subarray(offset, offset + this.mtu - 1);
    return Buffer.concat([Buffer.from([op + 1]), part]);
  }

  #write(request: Buffer, by: 'request' | 'command'): boolean {
    const attribute = this.#attributes[request.readUInt16LE(1) - 1];
    if (!attribute || (attribute.type !== CCCD && (attribute.spec?.writtenBy ?? by) !== by))
      return false;
    const value = request.subarray(3);
    if (attribute.type === CCCD) attribute.value = Buffer.from(value);
    else attribute.spec?.write?.(Buffer.from(value));
    return true;
  }
}
