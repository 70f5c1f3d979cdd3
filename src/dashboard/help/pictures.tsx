import type { ComponentChildren } from 'preact';
import { MEASURE_INFO, type MeasureKey } from '../../coaching/measureInfo.ts';
import { PoseDrawing } from '../body/PoseDrawing.tsx';
import { POSES } from '../body/poses.ts';
import { STEP_AT, drillAt } from '../drill/model.ts';
import { Shape } from '../practice/shapes.tsx';
import { SHOWN_MARKS } from '../review/view.ts';
import { t } from '../strings/strings.ts';

function Poses({ children }: { readonly children: ComponentChildren }) {
  return <div class="help-poses">{children}</div>;
}

function Drill({ leftHanded }: { readonly leftHanded: boolean }) {
  const { hold, release, catch: caught } = t.help.page.pictures;
  const view = { view: 'faceOn', leftHanded } as const;
  return (
    <Poses>
      <PoseDrawing {...view} {...drillAt(STEP_AT.hold)} label={hold} />
      <PoseDrawing {...view} {...drillAt(STEP_AT.release)} label={release} />
      <PoseDrawing {...view} {...drillAt(STEP_AT.catch)} label={caught} />
    </Poses>
  );
}

function Strap({ leftHanded }: { readonly leftHanded: boolean }) {
  const { chest, arm } = t.help.page.pictures;
  const hands = { do: 'hang' } as const;
  const upright = { view: 'faceOn', pose: POSES.upright, hands, leftHanded } as const;
  return (
    <Poses>
      <PoseDrawing {...upright} spot="chest" label={chest} />
      <PoseDrawing {...upright} spot="trailArm" label={arm} />
    </Poses>
  );
}

function Signs() {
  return (
    <ul class="help-signs">
      {SHOWN_MARKS.map((mark) => (
        <li key={mark}>
          <Shape mark={mark} />
          {t.ledger.entry[mark]}
        </li>
      ))}
    </ul>
  );
}

function Measures() {
  return (
    <dl class="help-terms">
      {(Object.keys(MEASURE_INFO) as MeasureKey[]).map((key) => {
        const { what, accuracy, cannotSee } = t.measures.info[key];
        return (
          <div key={key}>
            <dt>{t.measures.label(key)}</dt>
            <dd>
              {what} {t.measures.sure(accuracy.text)} {t.measures.cannotSee} {cannotSee}
            </dd>
          </div>
        );
      })}
    </dl>
  );
}

const PICTURES: Readonly<Record<string, (hand: { leftHanded: boolean }) => ComponentChildren>> = {
  drill: Drill,
  strap: Strap,
  signs: Signs,
  measures: Measures,
};

/** What is drawn or listed under the topic of that name; nothing where words are enough. */
export function TopicPicture(props: { readonly topic: string; readonly leftHanded: boolean }) {
  const Picture = PICTURES[props.topic];
  return Picture === undefined ? null : <>{Picture({ leftHanded: props.leftHanded })}</>;
}
