import { count } from '../count.ts';

/** The help page itself, for student and coach. */
export const page = {
  title: 'Help',
  search: 'Search the help',
  found: (n: number): string => count(n, 'topic'),
  nothing: 'No topic has all of these words. Try fewer words.',
  contents: 'Topics',
  print: 'Print the help',
  pictures: {
    hold: 'Figure at the top of the backswing, holding still',
    release: 'Figure with the chest turning down and the club let go',
    catch: 'Figure at the catch, the trail arm still rotated outward',
    chest: 'Figure from the front with a sensor on the breastbone',
    arm: 'Figure from the front with a sensor just above the elbow of the trail arm',
  },
};
