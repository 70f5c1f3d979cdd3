import type { SentenceBook } from '../../sensors/sentence.ts';

/** What the student's computer says of its connection with a hub. */
export const HUB_LINK_TEXTS = {
  'not-kept': 'Practices are not being saved now, so nothing can be sent to a coach.',
  'not-connected': 'Connect to your coach first.',
  connected: 'Disconnect from the other hub first.',
  'bad-address': 'Hub address: must start with https://',
  'plain-http':
    'This address is not encrypted. Others on the network could read your recordings and notes. Ask your coach for an address with https://, or connect anyway.',
  'no-answer': 'The hub is not responding.',
  'not-a-hub': 'There is no hub of this version at this address.',
  'unknown-here':
    'The hub no longer knows this computer. Disconnect, get a new code, and connect again.',
  'same-there': 'This recording is already on the hub.',
} as const satisfies SentenceBook;

export type LinkTextKey = keyof typeof HUB_LINK_TEXTS;
