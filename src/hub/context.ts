import type { Db, HubPlaces } from './db/open.ts';

/** What is asked of the hub, read once. */
export interface HubSettings {
  /** Address that people and machines reach it by, without a slash at its end. */
  readonly publicUrl: string;
}

/** Everything that the parts of the hub share. */
export interface HubContext {
  readonly db: Db;
  readonly places: HubPlaces;
  readonly settings: HubSettings;
  /** Epoch ms. */
  readonly now: () => number;
  /** For the terminal. */
  readonly say: (sentence: string) => void;
}

export const isSecure = ({ publicUrl }: HubSettings): boolean => publicUrl.startsWith('https:');
