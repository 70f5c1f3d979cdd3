import type { Strings } from '../shape.ts';

export const handsFree: Strings['handsFree'] = {
  title: 'Freihändig',
  doubleTap: 'Doppeltippen auf den Brustsensor: Pause und weiter',
  how: 'Steh still und tippe mit einem Finger zweimal auf den Sensor, nicht im Schwung und nicht beim Halten. Eine Stimme bestätigt es eine Sekunde später.',
  honest:
    'Nur mit simulierten Bewegungen getestet. An einer echten Brust können auch Husten, Klatschen oder Kleidung eine Pause auslösen. Darum ist es aus, bis du es einschaltest.',
  paused: 'Pause.',
  resumed: 'Weiter.',
};
