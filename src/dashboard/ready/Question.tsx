import type { ComponentChildren } from 'preact';

/** A question with its answers as buttons: nothing in it is ticked, and an arrow key chooses nothing in passing. */
export function Question<T extends string>(props: {
  readonly title: string;
  readonly answers: Readonly<Record<T, string>>;
  readonly chosen: T | null;
  readonly choose: (answer: T) => void;
  readonly children?: ComponentChildren;
}) {
  const { title, answers, chosen, choose, children } = props;
  return (
    <fieldset class="question">
      <legend>{title}</legend>
      {children}
      <div class="row">
        {(Object.keys(answers) as T[]).map((answer) => (
          <button
            type="button"
            key={answer}
            class={answer === chosen ? 'answer chosen' : 'answer'}
            aria-pressed={answer === chosen}
            onClick={() => choose(answer)}
          >
            {answers[answer]}
          </button>
        ))}
      </div>
    </fieldset>
  );
}
