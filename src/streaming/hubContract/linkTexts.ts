import type { SentenceBook } from '../../sensors/sentence.ts';

/** What the student's computer says of its connection with a hub. */
export const HUB_LINK_TEXTS = {
  'not-kept': 'Practices are not kept now, so nothing can be sent to a coach.',
  'not-connected': 'Connect with your coach first.',
  connected: 'Disconnect from the other hub first.',
  'bad-address': 'That is no address of a hub: it begins with https://',
  'plain-http':
    'This address is not encrypted: anyone on the way could read your recordings and notes. Ask your coach for an address with https://, or go on all the same.',
  'no-answer': 'The hub does not answer.',
  'not-a-hub': 'What answers at this address is not a hub of this version.',
  'unknown-here':
    'The hub does not know this computer any more. Disconnect, ask for a new code, and connect again.',
  'same-there': 'The same recording was at the hub already.',
} as const satisfies SentenceBook;

export type LinkTextKey = keyof typeof HUB_LINK_TEXTS;
