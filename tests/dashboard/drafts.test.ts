import { describe, expect, it } from 'vitest';
import { type DraftStorage, draftsOf } from '../../src/dashboard/drafts/drafts.ts';
import { draftOf, keptDraft } from '../../src/dashboard/plan/draft.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';

const DAY = 86_400_000;

/** As a browser's: it outlives the pages. */
function storage(): DraftStorage & { readonly kept: Map<string, string> } {
  const kept = new Map<string, string>();
  return {
    kept,
    getItem: (key) => kept.get(key) ?? null,
    setItem: (key, value) => void kept.set(key, value),
    removeItem: (key) => void kept.delete(key),
    key: (i) => [...kept.keys()][i] ?? null,
    get length() {
      return kept.size;
    },
  };
}

describe('a draft', () => {
  it('is there for the next page of the same account, and for no other account', () => {
    const browser = storage();
    draftsOf('carla', browser, () => 5).keep('session 1', 'Half a sentence');
    expect(draftsOf('carla', browser, () => 9).read('session 1')).toEqual({
      value: 'Half a sentence',
      atMs: 5,
    });
    expect(draftsOf('carla', browser).read('session 2')).toBeNull();
    for (const other of ['pim', 'carl', 'carla/session', ''])
      expect(draftsOf(other, browser, () => 9).read('session 1')).toBeNull();
  });

  it('is gone once it was sent', () => {
    const browser = storage();
    const drafts = draftsOf('carla', browser);
    drafts.keep('a', 'x');
    drafts.keep('b', 'y');
    drafts.drop('a');
    expect(drafts.read('a')).toBeNull();
    expect(drafts.read('b')).toMatchObject({ value: 'y' });
    expect(browser.kept.size).toBe(1);
  });

  it('is removed after two weeks, whoever wrote it, and what others keep there stays', () => {
    const browser = storage();
    browser.setItem('stillcatch.language', 'de');
    draftsOf('carla', browser, () => 0).keep('a', 'old');
    draftsOf('pim', browser, () => 3 * DAY).keep('a', 'newer');
    browser.setItem('stillcatch.draft/pim/broken', '{"value":');
    const later = draftsOf('pim', browser, () => 15 * DAY);
    expect(later.read('a')).toMatchObject({ value: 'newer' });
    expect([...browser.kept.keys()]).toEqual(['stillcatch.language', 'stillcatch.draft/pim/a']);
    expect(draftsOf('pim', browser, () => 17 * DAY + 1).read('a')).toBeNull();
  });

  it('lasts as long as the page where the browser keeps nothing', () => {
    const full = {
      ...storage(),
      setItem: () => {
        throw new Error('full');
      },
    };
    for (const browser of [null, full]) {
      const drafts = draftsOf('carla', browser);
      drafts.keep('a', 'x');
      expect(drafts.read('a')).toMatchObject({ value: 'x' });
      drafts.drop('a');
      expect(drafts.read('a')).toBeNull();
    }
  });

  it('of a plan is taken up only where it is whole', () => {
    const draft = draftOf(DEFAULT_PLAN);
    expect(keptDraft(JSON.parse(JSON.stringify({ ...draft, note: 'Half' })))).toEqual({
      ...draft,
      note: 'Half',
    });
    const without = Object.fromEntries(Object.entries(draft).filter(([name]) => name !== 'note'));
    for (const other of [
      null,
      'x',
      3,
      without,
      { ...draft, note: 5 },
      { ...draft, stage: 'x' },
      { ...draft, targets: {} },
      { ...draft, more: '' },
    ])
      expect(keptDraft(other)).toBeNull();
  });
});
