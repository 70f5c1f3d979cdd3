// A service with nothing but a radio process, to be killed.
import {
  RadioProcess,
  type RadioProcessOptions,
} from '../../../../src/sensors/sources/ble/radioProcess.ts';

const ignore = (): void => undefined;
const options = JSON.parse(process.env['RADIO'] ?? '{}') as RadioProcessOptions;
new RadioProcess({ started: ignore, message: ignore, crashed: ignore }, options).start();
