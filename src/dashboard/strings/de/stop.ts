import type { Strings } from '../shape.ts';

export const stop: Strings['stop'] = {
  title: 'Du hast heute aufgehört',
  at: (time) => `um ${time} Uhr`,
  text: {
    'red-flag':
      'Du hast ein Zeichen bejaht, das vielleicht dringend behandelt werden muss. Übe nicht. Hol dir jetzt ärztliche Hilfe.',
    'pain-high':
      'Dein Schmerz war zu stark zum Üben. Hol dir Rat bei Ärztin, Arzt oder Physiotherapie, bevor du wieder übst.',
    'pain-now':
      'Dein Schmerz verlangt eine Pause. Ruh dich heute aus. Ist er morgen noch da, geh zu Ärztin, Arzt oder Physiotherapie.',
  },
  read: 'Ich habe das gelesen',
};

export const safetyForm: Strings['safetyForm'] = {
  yes: 'Ja',
  no: 'Nein',
  yesStops: 'Ja beendet das Training sofort.',
  answerSigns: 'Beantworte erst die Frage nach den Zeichen.',
  answerHistory: 'Beantworte erst die Frage nach früheren Verletzungen.',
  historyAsk: 'Trifft etwas davon auf dich zu?',
  historyAnswers: { no: 'Nein', asked: 'Ja, ich habe gefragt', notAsked: 'Ja, noch nicht gefragt' },
  ready: 'Prüfen und abhaken',
};
