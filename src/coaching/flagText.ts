import type { RepetitionFlag } from '../swings/repetition.ts';

/** What a repetition's flags mean, in words. */
export const FLAG_TEXT: Readonly<Record<RepetitionFlag, string>> = {
  gap: 'data was lost during or just before this repetition, so it is not scored',
  'not-seen':
    'the signal was lost in the middle, so it could not be measured; set what it was if you know',
  saturated: 'a sensor went over its range, so it is not scored',
  drift: 'the last still address was long ago, so turn and arm angles may have drifted',
  'catch-assumed': 'measured to 400 ms after the release, because no catch was found',
  'catch-not-detected': 'no catch detected',
  landed: 'the club landed before the catch',
  'elevation-out-of-range':
    'the arm was raised less than 30 or more than 150 degrees, where its rotation cannot be measured',
  'release-measured': 'the club sensor measured the release',
  together: 'chest and arm started together (less than 20 ms apart)',
  'impact-not-detected': 'no impact found, so the fastest chest turn of the whole movement is used',
  'impact-not-seen':
    'the arm sensor sent no data at the moment of impact; correct the kind if this was a ball',
  'marked-by-hand': 'corrected by hand',
};
