import { PoseDrawing } from '../body/PoseDrawing.tsx';
import { t } from '../strings/strings.ts';
import { drillAt } from './model.ts';

const words = t.figure.drill;
const VIEWS = ['faceOn', 'downTheLine'] as const;

/** Both views of the drawn drill at one moment of it. */
export const DrillFigures = (props: { readonly timeS: number; readonly leftHanded: boolean }) => (
  <div class="body-views">
    {VIEWS.map((view) => (
      <figure key={view} class="body-view">
        <PoseDrawing
          view={view}
          {...drillAt(props.timeS)}
          leftHanded={props.leftHanded}
          label={`${words.title}, ${t.body[view]}`}
        />
        <figcaption>{t.body[view]}</figcaption>
      </figure>
    ))}
  </div>
);
