import { useEffect, useId, useRef, useState } from 'preact/hooks';
import type { NewComment, TextBlock } from '../../../streaming/hubContract/review.ts';
import { DraftNote } from '../../drafts/DraftNote.tsx';
import { h } from '../../strings/hub.ts';
import { isolated } from '../../strings/isolated.ts';
import { useAct } from '../parts/useAct.ts';
import { useHubDraft } from '../parts/useHubDraft.ts';

const words = h.session.comments;

/** What a comment can hang on. */
export interface Pin {
  readonly name: 'repetition' | 'moment' | 'session';
  readonly label: string;
  readonly index: number | null;
  readonly momentS: number | null;
}

function Blocks(props: {
  readonly blocks: readonly TextBlock[];
  readonly take: (text: string) => void;
}) {
  if (props.blocks.length === 0) return null;
  return (
    <label class="ready-text">
      {words.block}{' '}
      <select
        value=""
        onChange={(event) => {
          const block = props.blocks.find(({ id }) => id === event.currentTarget.value);
          event.currentTarget.value = '';
          if (block !== undefined) props.take(block.text);
        }}
      >
        <option value="">{words.blockNone}</option>
        {props.blocks.map(({ id, title }) => (
          <option key={id} value={id}>
            {isolated(title)}
          </option>
        ))}
      </select>
    </label>
  );
}

function Pins(props: {
  readonly pins: readonly Pin[];
  readonly chosen: Pin['name'] | undefined;
  readonly choose: (name: Pin['name']) => void;
}) {
  const group = useId();
  if (props.pins.length < 2) return null;
  return (
    <fieldset class="pins">
      <legend>{words.on}</legend>
      {props.pins.map(({ name, label }) => (
        <label key={name}>
          <input
            type="radio"
            name={group}
            checked={props.chosen === name}
            onChange={() => props.choose(name)}
          />
          {label}
        </label>
      ))}
    </fieldset>
  );
}

/** Where a comment is written; what was not sent stays with what it is about. */
export function CommentBox(props: {
  /** What the draft belongs to. */
  readonly about: string;
  readonly label: string;
  readonly pins: readonly Pin[];
  readonly replyTo?: string;
  /** It answers the student's note. */
  readonly onNote?: boolean;
  readonly blocks: readonly TextBlock[];
  readonly send: (comment: NewComment) => Promise<unknown>;
  readonly autofocus?: boolean;
}) {
  const draft = useHubDraft(props.about);
  const text = draft.value;
  const [name, choose] = useState(props.pins[0]?.name);
  const { busy, problem, run } = useAct();
  const field = useRef<HTMLTextAreaElement>(null);
  const id = useId();
  useEffect(() => {
    if (props.autofocus !== true) return;
    field.current?.scrollIntoView({ block: 'center' });
    field.current?.focus();
  }, []);
  const write = draft.set;
  const pin = props.pins.find((one) => one.name === name) ?? props.pins[0];
  const send = async (): Promise<void> => {
    if (text.trim() === '') return;
    const { index = null, momentS = null } = pin ?? {};
    const { replyTo = null, onNote = false } = props;
    const comment = { text: text.trim(), index, momentS, replyTo, onNote };
    if (await run(() => props.send(comment))) draft.drop();
  };
  const press = (event: KeyboardEvent): void => {
    if (event.key === 'Escape') {
      event.preventDefault();
      field.current?.blur();
    }
    if (event.key === 'Enter' && (event.ctrlKey || event.metaKey)) void send();
  };
  return (
    <form
      class="comment-box"
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <label for={id}>{props.label}</label>
      <textarea
        dir="auto"
        id={id}
        ref={field}
        rows={3}
        maxLength={4000}
        value={text}
        onInput={(event) => write(event.currentTarget.value)}
        onKeyDown={press}
      />
      <DraftNote restoredMs={draft.restoredMs} discard={() => draft.drop()} />
      <Pins pins={props.pins} chosen={pin?.name} choose={choose} />
      <div class="row">
        <button type="submit" disabled={busy || text.trim() === ''}>
          {words.send}
        </button>
        <Blocks
          blocks={props.blocks}
          take={(block) => {
            write(text === '' ? block : `${text.trimEnd()}\n${block}`);
            field.current?.focus();
          }}
        />
        <span class="fine">{words.keys}</span>
      </div>
      {problem !== null && (
        <p class="refusal" role="alert">
          {problem}
        </p>
      )}
    </form>
  );
}
