import type { RepetitionFlag } from '../swings/repetition.ts';

/** What stands beside a repetition's numbers, in words. */
export const FLAG_TEXT: Readonly<Record<RepetitionFlag, string>> = {
  gap: 'samples were lost during it or just before, so it is not scored',
  'not-seen':
    'the signal went in the middle of it, so nothing of it could be measured; say what it was if you know',
  saturated: 'a sensor was at the end of its range, so it is not scored',
  drift: 'the last still address is long ago, so turn and arm angles may have drifted',
  'catch-assumed': 'measured to 400 ms after the release, because no catch was found',
  'catch-not-detected': 'no catch was seen',
  landed: 'the club had landed before the catch',
  'elevation-out-of-range':
    'the arm was raised less than 30 or more than 150 degrees, where its rotation cannot be read',
  'release-measured': 'the release was seen by the sensor on the club',
  together: 'chest and arm started together (less than 20 ms apart)',
  'impact-not-detected':
    'no impact was found, so the fastest turn of the chest was looked for to the end of the movement',
  'impact-not-seen':
    'the arm sensor was silent when a ball would have been hit; say so if there was one',
  'marked-by-hand': 'its kind was set by hand',
};
