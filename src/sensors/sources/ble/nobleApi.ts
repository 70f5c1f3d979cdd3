import type { EventEmitter } from 'node:events';

// The part of `@abandonware/noble` that is used, by shape: the package is optional and its own types leave things out.

export interface NobleCharacteristic extends EventEmitter {
  readonly uuid: string;
  readonly properties: readonly string[];
  subscribeAsync(): Promise<void>;
  readAsync(): Promise<Buffer>;
  writeAsync(data: Buffer, withoutResponse: boolean): Promise<void>;
}

interface NobleService {
  readonly uuid: string;
  discoverCharacteristicsAsync(uuids: readonly string[]): Promise<NobleCharacteristic[]>;
}

interface NobleAdvertisement {
  readonly localName?: string | undefined;
  readonly serviceUuids?: readonly string[] | undefined;
}

interface ConnectParameters {
  /** Units of 1.25 ms. */
  readonly minInterval: number;
  readonly maxInterval: number;
  readonly latency: number;
  /** Supervision timeout, units of 10 ms. */
  readonly timeout: number;
}

export interface NoblePeripheral extends EventEmitter {
  readonly id: string;
  readonly advertisement: NobleAdvertisement;
  readonly rssi: number;
  readonly connectable: boolean;
  connectAsync(parameters: ConnectParameters): Promise<void>;
  cancelConnect(): void;
  disconnectAsync(): Promise<void>;
  updateRssiAsync(): Promise<number>;
  discoverServicesAsync(uuids: readonly string[]): Promise<NobleService[]>;
}

export interface Noble extends EventEmitter {
  readonly state: string;
  startScanningAsync(uuids: readonly string[], allowDuplicates: boolean): Promise<void>;
  stopScanningAsync(): Promise<void>;
}
