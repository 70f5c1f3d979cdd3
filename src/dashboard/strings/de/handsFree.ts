import type { Strings } from '../shape.ts';

export const handsFree: Strings['handsFree'] = {
  title: 'Ohne Hände',
  doubleTap: 'Doppeltippen auf den Brustsensor hält an und setzt fort',
  how: 'Tippe mit einem Finger zweimal auf den Sensor, während du ruhig stehst, nicht im Schwung und nicht beim Halten. Eine Stimme bestätigt es eine Sekunde später.',
  honest:
    'Erprobt nur mit simulierten Bewegungen. An einer echten Brust hält vielleicht auch Husten, Klatschen oder Kleidung an; darum ist es aus, bis du es einschaltest.',
  paused: 'Pause.',
  resumed: 'Weiter geht’s.',
};
