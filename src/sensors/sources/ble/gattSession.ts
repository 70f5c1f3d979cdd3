import { BATTERY_LEVEL, type Driver, type Gatt } from './drivers/driver.ts';
import { LinkError, type LinkErrorCode, linkError } from './linkError.ts';
import type { NobleCharacteristic, NoblePeripheral } from './nobleApi.ts';
import { within } from './within.ts';

const STEP_MS = 5000;

type Step = <T>(promise: Promise<T>) => Promise<T>;

async function discover(
  peripheral: NoblePeripheral,
  driver: Driver,
  step: Step,
): Promise<Map<string, NobleCharacteristic>> {
  const services = await step(peripheral.discoverServicesAsync([]));
  const wanted = services.filter((s) => driver.services.includes(s.uuid));
  if (!wanted.some((s) => s.uuid === driver.services[0])) throw new LinkError('services-missing');
  const found = new Map<string, NobleCharacteristic>();
  for (const service of wanted)
    for (const c of await step(service.discoverCharacteristicsAsync([]))) found.set(c.uuid, c);
  return found;
}

/**
 * GATT of one connection. It ends with `signal`; listeners go with it, so that nothing of an old
 * connection is heard in the next.
 */
export class GattSession implements Gatt {
  readonly #characteristics: Map<string, NobleCharacteristic>;
  readonly #step: Step;
  readonly #signal: AbortSignal;

  private constructor(
    characteristics: Map<string, NobleCharacteristic>,
    step: Step,
    signal: AbortSignal,
  ) {
    this.#characteristics = characteristics;
    this.#step = step;
    this.#signal = signal;
  }

  static async open(
    peripheral: NoblePeripheral,
    driver: Driver,
    signal: AbortSignal,
  ): Promise<GattSession> {
    const step: Step = (promise) => within(promise, STEP_MS, 'prepare-timeout', signal);
    return new GattSession(await discover(peripheral, driver, step), step, signal);
  }

  has(uuid: string): boolean {
    return this.#characteristics.has(uuid);
  }

  async read(uuid: string): Promise<Uint8Array> {
    return Uint8Array.from(await this.#guard(this.#get(uuid).readAsync()));
  }

  async write(uuid: string, bytes: Uint8Array | readonly number[]): Promise<void> {
    const characteristic = this.#get(uuid);
    const withoutResponse = !characteristic.properties.includes('write');
    await this.#guard(characteristic.writeAsync(Buffer.from(bytes), withoutResponse));
  }

  async subscribe(uuid: string, onBytes: (bytes: Uint8Array) => void): Promise<void> {
    const characteristic = this.#get(uuid);
    const listener = (data: Buffer, isNotification: boolean): void => {
      if (isNotification) onBytes(Uint8Array.from(data));
    };
    characteristic.removeAllListeners('data');
    characteristic.on('data', listener);
    this.#signal.addEventListener('abort', () => characteristic.removeAllListeners('data'), {
      once: true,
    });
    await this.#guard(characteristic.subscribeAsync());
  }

  /** Charge in percent; `null` where it does not say. */
  async battery(): Promise<number | null> {
    if (!this.has(BATTERY_LEVEL)) return null;
    const [level] = await this.read(BATTERY_LEVEL);
    return level !== undefined && level <= 100 ? level : null;
  }

  #get(uuid: string): NobleCharacteristic {
    const characteristic = this.#characteristics.get(uuid);
    if (!characteristic) throw new LinkError('services-missing', uuid);
    return characteristic;
  }

  async #guard<T>(promise: Promise<T>, code: LinkErrorCode = 'prepare-failed'): Promise<T> {
    try {
      return await this.#step(promise);
    } catch (error) {
      throw linkError(error, code);
    }
  }
}
