import { useCallback } from 'preact/hooks';
import { useAnswer } from '../../review/useAnswer.ts';
import { h } from '../../strings/hub.ts';
import { planLine } from '../student/PlansPart.tsx';
import { Asked } from '../parts/Asked.tsx';
import { HubPage } from '../parts/HubPage.tsx';
import { useAct } from '../parts/useAct.ts';
import { useHub } from '../shell/hub.ts';
import { BlocksPart } from './BlocksPart.tsx';
import { Own } from '../../shell/Own.tsx';

const words = h.club.texts;

function TemplatesPart() {
  const { client } = useHub();
  const answer = useAnswer(useCallback(() => client.students.templates(), [client]));
  const { busy, problem, run } = useAct();
  const drop = (id: string): void =>
    void run(async () => {
      await client.students.dropTemplate(id);
      answer.again();
    });
  return (
    <section class="part">
      <h2>{words.templates}</h2>
      <p class="fine">{words.templatesWhy}</p>
      {problem !== null && <p role="alert">{problem}</p>}
      <Asked of={answer}>
        {(templates) =>
          templates.length === 0 ? (
            <p class="empty">{words.noTemplates}</p>
          ) : (
            <ul class="lines">
              {templates.map(({ id, name, plan }) => (
                <li key={id}>
                  <span>
                    <b>
                      <Own>{name}</Own>
                    </b>{' '}
                    {planLine(plan)}
                  </span>
                  <button
                    type="button"
                    class="quiet"
                    disabled={busy}
                    aria-label={words.removeTemplateOf(name)}
                    onClick={() => drop(id)}
                  >
                    {h.shell.remove}
                  </button>
                </li>
              ))}
            </ul>
          )
        }
      </Asked>
    </section>
  );
}

/** The coach's own ready texts and plan templates. */
export function TextsPage() {
  return (
    <HubPage title={words.title}>
      <BlocksPart />
      <TemplatesPart />
    </HubPage>
  );
}
