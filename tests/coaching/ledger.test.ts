import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addToLedger,
  canUndo,
  type CorrectedKind,
  correctLedger,
  emptyLedger,
  type LedgerBook,
  ledgerEntries,
  ledgerOf,
  ledgerStatus,
  ledgerText,
  type RepetitionKind,
  undoCorrection,
} from '../../src/coaching/ledger.ts';
import { DEFAULT_PLAN, type Plan } from '../../src/coaching/plan.ts';

const KIND: Record<string, RepetitionKind> = { r: 'rehearsal', b: 'ball', p: 'practiceSwing' };

/** A book from letters, as in `rrb`. */
function bookOf(letters: string, plan: Plan = DEFAULT_PLAN): LedgerBook {
  return [...letters].reduce(
    (book, letter, i) => addToLedger(book, { index: i + 1, kind: KIND[letter] ?? 'rehearsal' }),
    emptyLedger(plan),
  );
}
const withRatio = (rehearsals: number, balls: number): Plan => ({
  ...DEFAULT_PLAN,
  ratio: { rehearsals, balls },
});
const says = (letters: string, plan?: Plan) => ledgerText(ledgerStatus(bookOf(letters, plan)));

describe('the ledger', () => {
  it('is empty before the first repetition', () => {
    expect(ledgerOf(bookOf(''))).toEqual({
      rehearsals: 0,
      balls: 0,
      ratio: null,
      ballsInMix: 0,
      entries: '',
    });
  });

  it('counts rehearsals and balls in order and leaves practice swings out', () => {
    const book = bookOf('rrpbrpb');
    expect(ledgerOf(book)).toEqual({
      rehearsals: 3,
      balls: 2,
      ratio: 1.5,
      ballsInMix: 1,
      entries: 'rrbrb',
    });
    expect(ledgerEntries(book).map((e) => e.kind)).toContain('practiceSwing');
  });

  it.each([
    ['rrbrrb', 2, 1, 2],
    ['rb', 2, 1, 0],
    ['rbrb', 2, 1, 0],
    ['rrbb', 2, 1, 1],
    ['rrrrb', 2, 1, 1],
    ['brrb', 2, 1, 1],
    ['rrbb', 2, 2, 2],
    ['rrbbb', 2, 2, 2],
    ['rrbrb', 2, 2, 1],
    ['rprb', 2, 1, 1],
  ])('finds in %s at %d to %d that %d balls came in the mix', (letters, r, b, inMix) => {
    expect(ledgerOf(bookOf(letters, withRatio(r, b))).ballsInMix).toBe(inMix);
  });

  it('says what is next', () => {
    expect(says('')).toBe('2 rehearsals to go.');
    expect(says('r')).toBe('One rehearsal to go.');
    expect(says('rr')).toBe('Hit a ball.');
    expect(says('rrr')).toBe('Hit a ball.');
    expect(says('rrb')).toBe('2 rehearsals to go.');
    expect(says('rr', withRatio(2, 3))).toBe('Hit 3 balls.');
    expect(says('rrb', withRatio(2, 3))).toBe('Hit 2 balls.');
  });

  it('gently says that a ball came too early, until the next repetition', () => {
    expect(says('rb')).toBe('That ball was too early. First 2 rehearsals.');
    expect(says('rrbb')).toBe('That ball was too early. First 2 rehearsals.');
    expect(says('rbr')).toBe('One rehearsal to go.');
  });

  it('asks for no ball in the stage of movement only', () => {
    const plan: Plan = { ...DEFAULT_PLAN, stage: 'movement' };
    expect(says('rrrr', plan)).toBe('Rehearsals only.');
    expect(says('rrb', plan)).toBe('No balls yet. Rehearsals only for now.');
    expect(ledgerOf(bookOf('rrb', plan)).ballsInMix).toBe(0);
  });

  it('turns a practice swing into a ball, ignores one, and takes it back', () => {
    const book = correctLedger(bookOf('rrp'), 3, 'ball');
    expect(ledgerOf(book).entries).toBe('rrb');
    expect(ledgerEntries(book)[2]).toEqual({
      index: 3,
      detected: 'practiceSwing',
      corrected: 'ball',
      kind: 'ball',
      inMix: true,
    });
    expect(ledgerOf(correctLedger(book, 1, 'ignored'))).toMatchObject({
      entries: 'rb',
      ballsInMix: 0,
    });
    expect(ledgerOf(undoCorrection(undoCorrection(book))).entries).toBe('rr');
  });

  it('undoes to the correction before, not to the detection', () => {
    const twice = correctLedger(correctLedger(bookOf('r'), 1, 'ball'), 1, 'ignored');
    expect(ledgerEntries(undoCorrection(twice))[0]?.kind).toBe('ball');
    expect(ledgerEntries(undoCorrection(twice))[0]?.kind).toBe('rehearsal');
  });

  it('has nothing to undo before a correction', () => {
    const book = bookOf('rrb');
    expect(canUndo(book)).toBe(false);
    expect(undoCorrection(book)).toBe(book);
  });
});

type Action = ['add', number, RepetitionKind] | ['correct', number, CorrectedKind] | ['undo'];
const kinds = ['rehearsal', 'ball', 'practiceSwing'] as const;
const anyAction: fc.Arbitrary<Action> = fc.oneof(
  fc.tuple(fc.constant('add' as const), fc.integer({ min: 1, max: 12 }), fc.constantFrom(...kinds)),
  fc.tuple(
    fc.constant('correct' as const),
    fc.integer({ min: 1, max: 12 }),
    fc.constantFrom(...kinds, 'ignored' as const),
  ),
  fc.constant(['undo'] as ['undo']),
);

function act(book: LedgerBook, action: Action): LedgerBook {
  if (action[0] === 'undo') return undoCorrection(book);
  const [what, index, kind] = action;
  return what === 'add' ? addToLedger(book, { index, kind }) : correctLedger(book, index, kind);
}
const run = (actions: Action[]): LedgerBook => actions.reduce(act, emptyLedger(DEFAULT_PLAN));

describe('any order of repetitions, corrections and undo', () => {
  it('keeps counts that agree with the entries', () => {
    fc.assert(
      fc.property(fc.array(anyAction), (actions) => {
        const ledger = ledgerOf(run(actions));
        expect(ledger.entries.length).toBe(ledger.rehearsals + ledger.balls);
        expect(ledger.entries.replaceAll('r', '').length).toBe(ledger.balls);
        expect(ledger.ballsInMix).toBeLessThanOrEqual(
          Math.min(ledger.balls, Math.floor(ledger.rehearsals / 2)),
        );
        expect(ledger.ratio === null).toBe(ledger.balls === 0);
      }),
    );
  });

  it('gives the same ledger whatever the order in which repetitions arrive', () => {
    const all = fc.uniqueArray(
      fc.tuple(fc.integer({ min: 1, max: 30 }), fc.constantFrom(...kinds)),
      { selector: ([i]) => i },
    );
    fc.assert(
      fc.property(
        all.chain((a) => fc.tuple(fc.constant(a), fc.shuffledSubarray(a, { minLength: a.length }))),
        ([a, b]) => {
          const add = (list: [number, RepetitionKind][]) =>
            run(list.map(([i, k]) => ['add', i, k]));
          expect(ledgerEntries(add(a))).toEqual(ledgerEntries(add(b)));
        },
      ),
    );
  });

  it('restores what stood before a correction', () => {
    fc.assert(
      fc.property(
        fc.array(anyAction),
        fc.integer({ min: 1, max: 12 }),
        fc.constantFrom(...kinds),
        (actions, index, kind) => {
          const book = run(actions);
          const before = ledgerEntries(book);
          expect(ledgerEntries(undoCorrection(correctLedger(book, index, kind)))).toEqual(before);
        },
      ),
    );
  });

  it('comes back to what was detected after enough undoing, and keeps the whole history', () => {
    fc.assert(
      fc.property(fc.array(anyAction), (actions) => {
        let book = run(actions);
        while (canUndo(book)) book = undoCorrection(book);
        expect(
          ledgerEntries(book).every((e) => e.corrected === null && e.kind === e.detected),
        ).toBe(true);
        const made = actions.filter((a) => a[0] === 'correct').length;
        expect(book.events.filter((e) => e.type === 'corrected')).toHaveLength(made);
      }),
    );
  });

  it('asks for a ball exactly when one would be in the mix', () => {
    fc.assert(
      fc.property(fc.array(anyAction), (actions) => {
        const book = run(actions);
        const due = ledgerStatus(book).next === 'ball';
        const withBall = addToLedger(book, { index: 99, kind: 'ball' });
        expect(due).toBe(ledgerEntries(withBall).at(-1)?.inMix);
      }),
    );
  });

  it('costs each correction and undo as much, however many came before', () => {
    const book = bookOf('rrbrrb');
    for (let n = 0; n < 200_000; n++) correctLedger(book, 1 + (n % 6), 'ball');
    for (let n = 0; n < 199_999; n++) undoCorrection(book);
    expect(ledgerEntries(book).filter((e) => e.corrected !== null)).toHaveLength(1);
  });

  it('goes on from JSON', () => {
    fc.assert(
      fc.property(fc.array(anyAction), fc.array(anyAction), (a, b) => {
        const cut = JSON.parse(JSON.stringify(run(a))) as LedgerBook;
        expect(b.reduce(act, cut)).toEqual(run([...a, ...b]));
      }),
    );
  });
});
