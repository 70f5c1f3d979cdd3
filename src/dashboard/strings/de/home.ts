import type { Strings } from '../shape.ts';
import { PAIN_SIGNS } from './safety.ts';

const day = new Intl.DateTimeFormat('de-DE', { dateStyle: 'long' });

export const home: Strings['home'] = {
  alerts: 'Warnungen und Hinweise',
  warningPlace: (n, of) => `${n} von ${of}`,
  refused: 'Fehlgeschlagen.',
  moved: 'Ein Sensor ist verrutscht',
  day: (ms) => day.format(ms),
  painSigns: (signs) =>
    `Schmerz beschrieben als: ${signs.map((sign) => PAIN_SIGNS[sign]).join(', ')}`,
  panels: 'Körper, Kurven und Messwerte',
};
