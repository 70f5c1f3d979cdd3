export type SimulatedSensor = 'chest' | 'trailArm';
/** The third one is on the club, under the grip's end; made only where asked for. */
export type SimulatedDevice = SimulatedSensor | 'club';

export const SIMULATED_SENSORS: readonly SimulatedSensor[] = ['chest', 'trailArm'];
