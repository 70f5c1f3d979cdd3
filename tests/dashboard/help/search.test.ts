import { describe, expect, it } from 'vitest';
import { findTopics } from '../../../src/dashboard/help/search.ts';
import { textOf } from '../../../src/dashboard/help/topic.ts';
import { DICTIONARIES } from '../../../src/dashboard/strings/strings.ts';

const TOPICS = {
  tones: { title: 'What you hear', body: ['Press a key.', { terms: [['Tick', 'Übung begins']] }] },
  pain: { title: 'Pain', body: [{ points: ['Stop.'] }, { steps: ['Press the key H.'] }] },
  keys: { title: 'A key for each', body: [] },
} as const;

describe('a search in the help', () => {
  it('finds every topic where nothing is asked', () => {
    expect(findTopics(TOPICS, ' ')).toEqual(['tones', 'pain', 'keys']);
  });

  it('finds a word wherever it stands, and topics that have it in their title first', () => {
    expect(findTopics(TOPICS, 'key')).toEqual(['keys', 'tones', 'pain']);
    expect(findTopics(TOPICS, 'tick')).toEqual(['tones']);
    expect(findTopics(TOPICS, 'stop')).toEqual(['pain']);
  });

  it('wants every word', () => {
    expect(findTopics(TOPICS, 'key stop')).toEqual(['pain']);
    expect(findTopics(TOPICS, 'key nowhere')).toEqual([]);
  });

  it('takes letters without their accents and capitals', () => {
    expect(findTopics(TOPICS, 'UBUNG')).toEqual(['tones']);
  });
});

describe('the help', () => {
  it('answers what people ask, in both languages', () => {
    const asked = {
      en: ['lost sensor', 'pain', 'backup', 'delete', 'second screen', 'no sound mute', 'refused'],
      de: ['sensor verloren', 'schmerzen', 'sicherung', 'löschen', 'stumm', 'abgelehnt'],
    } as const;
    for (const language of ['en', 'de'] as const)
      for (const question of asked[language])
        expect(findTopics(DICTIONARIES[language].help.student, question), question).not.toEqual([]);
  });

  it('says nothing twice within a topic', () => {
    for (const { help } of Object.values(DICTIONARIES))
      for (const topic of [...Object.values(help.student), ...Object.values(help.coach)]) {
        const lines = textOf(topic).split('\n');
        expect(new Set(lines).size).toBe(lines.length);
      }
  });
});
