import { vi } from 'vitest';
import { Central } from '../../../../src/sensors/sources/ble/central.ts';
import type { FromRadio, Wish } from '../../../../src/sensors/sources/ble/messages.ts';
import type { Noble } from '../../../../src/sensors/sources/ble/nobleApi.ts';
import { VirtualRadio } from '../../../virtual-radio/controller.ts';
import { freshNoble, killSockets, useRadio } from '../../../virtual-radio/install.ts';
import type { VirtualSensor } from '../../../virtual-radio/sensors.ts';

type Of<T extends FromRadio['type']> = Extract<FromRadio, { type: T }>;

/** noble names a peripheral by its address without colons. */
export const idOf = (sensor: VirtualSensor): string =>
  sensor.peripheral.address.replaceAll(':', '');

export const wishFor = (sensor: VirtualSensor, driver: Wish['driver'] = 'openProfile'): Wish => ({
  id: idOf(sensor),
  driver,
  name: 'x',
});

/** The client on noble's real stack over a virtual radio, with a hand-cranked clock. */
export class Bench {
  readonly radio: VirtualRadio;
  readonly messages: FromRadio[] = [];
  central: Central;
  noble: Noble;
  keepPackets = true;
  #generation = 0;
  onMessage: (message: FromRadio) => void = () => undefined;

  constructor(seed = 1) {
    vi.useFakeTimers({
      toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval', 'performance'],
    });
    process.setMaxListeners(0);
    this.radio = new VirtualRadio(seed);
    [this.noble, this.central] = this.#start();
  }

  #start(): [Noble, Central] {
    useRadio(this.radio);
    const noble = freshNoble() as Noble;
    const generation = this.#generation;
    const out = (m: FromRadio): void => {
      if (generation === this.#generation) this.#take(m);
    };
    const central = new Central(noble, out, () => performance.now());
    return [noble, central];
  }

  #take(message: FromRadio): void {
    if (message.type !== 'packet' || this.keepPackets) this.messages.push(message);
    this.onMessage(message);
  }

  /** What the service does when the radio's process asks for it. */
  restart(wishes: readonly Wish[]): void {
    void this.central.stop();
    [this.noble, this.central] = this.#start();
    this.central.take({ type: 'want', wishes });
  }

  /** As by kill -9: nothing is said to the adapter. */
  kill(): void {
    killSockets();
    this.#generation += 1;
    this.messages.length = 0;
  }

  revive(): void {
    [this.noble, this.central] = this.#start();
  }

  async run(seconds: number): Promise<void> {
    await vi.advanceTimersByTimeAsync(seconds * 1000);
  }

  /** Cranks until it is so. */
  async until(done: () => boolean, seconds: number): Promise<number> {
    const from = performance.now();
    while (!done() && performance.now() - from < seconds * 1000)
      await vi.advanceTimersByTimeAsync(10);
    return (performance.now() - from) / 1000;
  }

  of<T extends FromRadio['type']>(type: T): Of<T>[] {
    return this.messages.filter((m): m is Of<T> => m.type === type);
  }

  packets(sensor: VirtualSensor): Of<'packet'>[] {
    return this.of('packet').filter((m) => m.id === idOf(sensor));
  }

  state(sensor: VirtualSensor): string | undefined {
    return this.of('link').findLast((m) => m.id === idOf(sensor))?.state;
  }

  states(sensor: VirtualSensor): string[] {
    return this.of('link').flatMap((m) => (m.id === idOf(sensor) ? [m.state] : []));
  }

  async end(): Promise<void> {
    vi.clearAllTimers();
    vi.useRealTimers();
    useRadio(null);
  }
}
