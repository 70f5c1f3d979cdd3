export { type ReplayInput } from './arrivals.ts';
export { type ReplayOptions, ReplaySource } from './replaySource.ts';
