export { type ReplayInput } from './arrivals.ts';
export { ReplaySource } from './replaySource.ts';
