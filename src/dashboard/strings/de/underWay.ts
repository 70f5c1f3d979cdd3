import type { Strings } from '../shape.ts';

export const count: Strings['count'] = {
  done: (done, goal) => `${done} von ${goal} Wiederholungen`,
  row: (n) => `${n} in Folge`,
  rowSpoken: (n) => `Gut. ${n} in Folge.`,
  reached: 'Ziel erreicht',
  rest: 'Die Hälfte der Wiederholungen ist geschafft. Mach ein, zwei Minuten Pause.',
  restSpoken: 'Halb geschafft. Mach kurz Pause.',
};

export const interrupted: Strings['interrupted'] = {
  title: 'Dein Training wurde unterbrochen',
  spoken: 'Dein Training wurde unterbrochen.',
  kept: 'Das Programm auf diesem Computer wurde neu gestartet. Alles, was bis dahin aufgenommen wurde, ist gespeichert.',
  nothing: 'Das Programm auf diesem Computer wurde neu gestartet. Es war noch nichts aufgenommen.',
  open: 'Das aufgenommene Training öffnen',
  close: 'Schließen',
};
