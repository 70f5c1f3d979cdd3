import type { Strings } from '../shape.ts';

export const figure: Strings['figure'] = {
  solid: 'Kräftig: gemessen',
  pale: 'Blass: nur zur Orientierung gezeichnet',
  paleShort: 'Blass: gezeichnet',
  drill: {
    title: 'Die Übung',
    drawn: 'Die Übung, gezeichnet',
    show: 'Übung zeigen',
    play: 'Abspielen',
    pause: 'Anhalten',
    step: { address: 'Ansprechen', hold: 'Halten', release: 'Loslassen', catch: 'Fangen' },
    says: {
      address: 'Sprich den Ball an und halte still.',
      hold: 'Schwing nach oben und halte still.',
      release:
        'Lass los: Erst dreht und beugt sich die Brust nach unten, die Arme warten, der Schläger fällt.',
      catch: 'Fang den fallenden Schläger, der Arm ist noch nach außen gedreht.',
    },
    notMeasured: 'Die Übung ist gezeichnet, nicht gemessen.',
    slow: 'Der Fall läuft viermal langsamer.',
    best: 'Deine beste Wiederholung',
    simulatedBest: 'Beste Wiederholung der simulierten Person',
    which: (when, index) => `${when}, Wiederholung ${index}`,
    none: 'Deine beste Wiederholung erscheint hier nach der ersten gewerteten Übung.',
    inStep:
      'Oben, Loslassen und Fangen sind im selben Moment zu sehen; die Zeit dazwischen ist gedehnt.',
    beside: 'Mit der Übung vergleichen',
  },
};
