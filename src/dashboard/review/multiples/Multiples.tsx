import { useMemo } from 'preact/hooks';
import type { JudgedRepetition } from '../../../coaching/judgement.ts';
import type { OverviewEntry } from '../../../streaming/sessionsContract.ts';
import { Shape } from '../../practice/shapes.tsx';
import { t } from '../../strings/strings.ts';
import type { Range } from '../plot/scale.ts';
import { nameOf } from '../strip/nameOf.ts';
import { useWalk } from '../strip/useWalk.ts';
import { type Corrections, markOfRepetition } from '../view.ts';
import { TILE, type Tile, tilesOf } from './tiles.ts';

const words = t.review.multiples;

const BOX = `0 0 ${TILE.width} ${2 * TILE.height}`;
const RELEASE_X = (TILE.width * 1.5) / 2.5;

function Lines({ tile, typical }: { readonly tile: Tile; readonly typical: Tile | undefined }) {
  return (
    <svg viewBox={BOX} preserveAspectRatio="none" aria-hidden="true" focusable="false">
      <path class="release-line" d={`M${RELEASE_X} 0V${2 * TILE.height}`} />
      {typical && <path class="typical" d={typical.flexion} />}
      <path class="line" d={tile.flexion} />
      <g transform={`translate(0 ${TILE.height})`}>
        {typical && <path class="typical" d={typical.turn} />}
        <path class="line turn" d={tile.turn} />
      </g>
    </svg>
  );
}

const rangeText = ({ low, high }: Range): string => words.range(low.toFixed(0), high.toFixed(0));

/** All shown repetitions laid out on the same axes, aligned at the release; clickable, walked with arrow keys. */
export function Multiples(props: {
  readonly repetitions: readonly JudgedRepetition[];
  readonly entries: readonly OverviewEntry[];
  readonly typical: number | null;
  readonly openOne: (index: number) => void;
  readonly corrected: Corrections;
}) {
  const { repetitions, entries, typical, openOne, corrected } = props;
  const all = useMemo(() => tilesOf(entries), [entries]);
  const drawn = repetitions.filter((r) => all.tiles.has(r.index));
  const { list, tabIndex, ...keys } = useWalk(drawn.length);
  const grey = typical === null ? undefined : all.tiles.get(typical);
  return (
    <>
      <p class="fine">
        {words.legend(
          words.around(t.decimal(all.time.low, 1), t.decimal(all.time.high, 1)),
          rangeText(all.flexion),
          rangeText(all.turn),
        )}{' '}
        {typical !== null && words.typical(typical)}
      </p>
      <ol class="multiples" aria-label={words.title} ref={list} {...keys}>
        {drawn.map((r, place) => (
          <li key={r.index}>
            <button
              type="button"
              tabIndex={tabIndex(place)}
              aria-label={nameOf(r, corrected)}
              onClick={() => openOne(r.index)}
            >
              <span class="tile-name" aria-hidden="true">
                <Shape mark={markOfRepetition(r, corrected)} /> {r.index}
              </span>
              <Lines
                tile={all.tiles.get(r.index)!}
                typical={r.index === typical ? undefined : grey}
              />
            </button>
          </li>
        ))}
      </ol>
    </>
  );
}
