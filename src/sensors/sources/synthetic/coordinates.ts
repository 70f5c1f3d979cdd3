import type { Jet } from './channel.ts';

/**
 * The coordinates of the figure. Angles in rad: `heading` of the feet; thorax Y-X-Z `turn` (toward the
 * target +), `lateral` (trail +), `flexion` (forward +); humerus in the thorax Y-X-Y `plane`,
 * `elevation`, `externalRotation` (outward +). `hip*` in m, global. `loose*` turn and lower sensors that
 * are off the body. `life` (1 = as usual) scales the texture.
 */
export const CHANNELS = [
  'heading',
  'turn',
  'lateral',
  'flexion',
  'plane',
  'elevation',
  'externalRotation',
  'hipX',
  'hipY',
  'hipZ',
  'looseX',
  'looseY',
  'looseDrop',
  'life',
] as const;

export type ChannelName = (typeof CHANNELS)[number];
export type Coordinates = Record<ChannelName, Jet>;
