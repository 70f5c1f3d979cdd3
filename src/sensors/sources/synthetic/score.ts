import {
  type Channel,
  TAKE_UP_S,
  addJets,
  movedAt,
  forgetBefore,
  multiplyJets,
} from './channel.ts';
import { CHANNELS, type ChannelName, type Coordinates } from './coordinates.ts';
import { type Shock, shockSwing } from './shock.ts';
import { type Texture, textureAt } from './texture.ts';

/** All that will move, as far as it is planned. */
export interface Score {
  readonly channels: Record<ChannelName, Channel>;
  readonly texture: Texture;
  readonly shocks: Shock[];
  /** When the club was in nobody's hand, true s, and how that ended. */
  readonly falls: Fall[];
}

export interface Fall {
  readonly fromS: number;
  readonly toS: number;
  /** It lies on the ground until it is picked up, s; `null` where it was caught. */
  readonly liesUntilS: number | null;
}

const record = <T>(of: (name: ChannelName) => T): Record<ChannelName, T> =>
  Object.fromEntries(CHANNELS.map((name) => [name, of(name)])) as Record<ChannelName, T>;

export function createScore(texture: Texture, life: number): Score {
  const channels = record<Channel>(() => []);
  channels.life.push({ timeS: 0, x: life, v: 0, a: 0 });
  return { channels, texture, shocks: [], falls: [] };
}

export function coordinatesAt(score: Score, timeS: number): Coordinates {
  const planned = record((name) => movedAt(score.channels[name], timeS));
  const out = record((name) => {
    const waves = score.texture[name];
    return waves
      ? addJets(planned[name], multiplyJets(planned.life, textureAt(waves, timeS)))
      : planned[name];
  });
  out.elevation = addJets(out.elevation, shockSwing(score.shocks, timeS));
  return out;
}

/** Keeps memory flat: drops what no time from `timeS` on needs. */
export function forgetScoreBefore(score: Score, timeS: number): void {
  for (const name of CHANNELS) forgetBefore(score.channels[name], timeS - TAKE_UP_S);
  while ((score.falls[0]?.toS ?? Infinity) < timeS - 10) score.falls.shift();
  while ((score.shocks[0]?.timeS ?? Infinity) < timeS - 2) score.shocks.shift();
}
