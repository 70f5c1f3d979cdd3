/** Die Hilfeseite selbst. */
export const page = {
  title: 'Hilfe',
  search: 'Hilfe durchsuchen',
  found: (n: number): string => (n === 1 ? '1 Thema' : `${n} Themen`),
  nothing: 'Kein Thema enthält alle diese Wörter. Versuche es mit weniger Wörtern.',
  contents: 'Themen',
  print: 'Hilfe drucken',
  pictures: {
    hold: 'Figur am höchsten Punkt des Rückschwungs, ganz still',
    release: 'Figur beim Loslassen, der Brustkorb dreht sich nach unten',
    catch: 'Figur beim Fangen, der hintere Arm noch nach außen gedreht',
    chest: 'Figur von vorn mit einem Sensor auf dem Brustbein',
    arm: 'Figur von vorn mit einem Sensor am Oberarm dicht über dem Ellbogen',
  },
};
