export { type SyntheticSourceOptions, type Timers, SyntheticSource } from './source.ts';
export { type SimulatedSession, simulateSession, streamSession } from './simulation.ts';
export { ScriptError, parseScript } from './script.ts';
