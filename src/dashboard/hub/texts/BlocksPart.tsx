import { useCallback, useState } from 'preact/hooks';
import type { TextBlock } from '../../../streaming/hubContract/review.ts';
import { useAnswer } from '../../review/useAnswer.ts';
import { h } from '../../strings/hub.ts';
import { Asked } from '../parts/Asked.tsx';
import { Field, Form, TextField } from '../parts/Field.tsx';
import { useAct } from '../parts/useAct.ts';
import { useHub } from '../shell/hub.ts';
import { Own } from '../../shell/Own.tsx';

const words = h.club.texts;
type Words = Omit<TextBlock, 'id'>;

function BlockForm(props: {
  readonly from: Words;
  readonly go: string;
  readonly send: (block: Words) => Promise<unknown>;
  readonly cancel?: () => void;
}) {
  const [block, setBlock] = useState(props.from);
  const { busy, problem, run } = useAct();
  const send = (): void =>
    void run(async () => {
      await props.send(block);
      setBlock(props.from);
    });
  return (
    <Form
      go={props.go}
      send={send}
      busy={busy}
      problem={problem}
      small
      {...(props.cancel && { cancel: props.cancel })}
    >
      <Field
        label={words.name}
        value={block.title}
        set={(title) => setBlock((old) => ({ ...old, title }))}
        maxLength={80}
      />
      <TextField
        label={words.text}
        value={block.text}
        set={(text) => setBlock((old) => ({ ...old, text }))}
        rows={3}
      />
    </Form>
  );
}

function Block({ block, again }: { readonly block: TextBlock; readonly again: () => void }) {
  const { client } = useHub();
  const [changing, setChanging] = useState(false);
  const { busy, problem, run } = useAct();
  if (changing)
    return (
      <li>
        <BlockForm
          from={block}
          go={h.shell.save}
          cancel={() => setChanging(false)}
          send={async ({ title, text }) => {
            await client.sessions.changeBlock({ id: block.id, title, text });
            setChanging(false);
            again();
          }}
        />
      </li>
    );
  const drop = (): void =>
    void run(async () => {
      await client.sessions.dropBlock(block.id);
      again();
    });
  return (
    <li>
      <span class="pre">
        <b>
          <Own>{block.title}</Own>
        </b>{' '}
        <Own>{block.text}</Own>
        {problem !== null && <span role="alert"> {problem}</span>}
      </span>
      <span class="row">
        <button
          type="button"
          class="quiet"
          aria-label={words.changeOf(block.title)}
          onClick={() => setChanging(true)}
        >
          {words.change}
        </button>
        <button
          type="button"
          class="quiet"
          disabled={busy}
          aria-label={words.removeOf(block.title)}
          onClick={drop}
        >
          {h.shell.remove}
        </button>
      </span>
    </li>
  );
}

/** Ready texts of the coach's own. */
export function BlocksPart() {
  const { client } = useHub();
  const answer = useAnswer(useCallback(() => client.sessions.blocks(), [client]));
  return (
    <section class="part">
      <h2>{words.blocks}</h2>
      <p class="fine">{words.blocksWhy}</p>
      <Asked of={answer}>
        {(blocks) => (
          <>
            {blocks.length === 0 && <p class="empty">{words.noBlocks}</p>}
            <ul class="lines">
              {blocks.map((block) => (
                <Block key={block.id} block={block} again={answer.again} />
              ))}
            </ul>
          </>
        )}
      </Asked>
      <BlockForm
        from={{ title: '', text: '' }}
        go={words.add}
        send={async (block) => {
          await client.sessions.addBlock(block);
          answer.again();
        }}
      />
    </section>
  );
}
