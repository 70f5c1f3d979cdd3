/** The files of one session, whether they lie in a folder or in a zip. Names are relative, with `/`. */
export interface SessionFiles {
  /** What the person gave, for messages. */
  readonly label: string;
  readonly names: readonly string[];
  size(name: string): number;
  /** The file's bytes in order; a chunk is valid until the next one is asked for. */
  chunks(name: string): AsyncIterable<Uint8Array>;
  close(): Promise<void>;
}

export interface Limits {
  /** Files and folders. */
  readonly entries: number;
  /** One file, bytes unpacked. */
  readonly fileBytes: number;
  /** All files, bytes unpacked. */
  readonly totalBytes: number;
  /** Unpacked over packed size of a file over 1 MB. Sensor data packs to about a quarter. */
  readonly ratio: number;
}

/** Two hours of three sensors are 190 MB; these leave room for ten. */
export const LIMITS: Limits = {
  entries: 2000,
  fileBytes: 512 * 2 ** 20,
  totalBytes: 2 ** 30,
  ratio: 100,
};

export const CHUNK_BYTES = 256 * 1024;
