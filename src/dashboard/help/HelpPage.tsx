import { useState } from 'preact/hooks';
import { Caution } from '../shell/Caution.tsx';
import { t } from '../strings/strings.ts';
import { TopicPicture } from './pictures.tsx';
import { findTopics } from './search.ts';
import type { HelpBlock, HelpTopic, HelpTopics } from './topic.ts';

function Block({ block }: { readonly block: HelpBlock }) {
  if (typeof block === 'string') return <p>{block}</p>;
  if ('terms' in block)
    return (
      <dl class="help-terms">
        {block.terms.map(([term, meaning]) => (
          <div key={term}>
            <dt>{term}</dt>
            <dd>{meaning}</dd>
          </div>
        ))}
      </dl>
    );
  const lines = 'steps' in block ? block.steps : block.points;
  const List = 'steps' in block ? 'ol' : 'ul';
  return (
    <List class="help-list">
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </List>
  );
}

const idOf = (name: string): string => `help-${name}`;

/** The address belongs to the router, so the jump is made by hand. */
function jumpTo(name: string): void {
  const topic = document.getElementById(idOf(name));
  topic?.scrollIntoView();
  topic?.focus();
}

function Topic(props: {
  readonly name: string;
  readonly topic: HelpTopic;
  readonly leftHanded: boolean;
}) {
  const { name, topic, leftHanded } = props;
  // A picture follows the sentence that introduces it.
  const introduced = typeof topic.body[0] === 'string' ? 1 : 0;
  return (
    <article class="help-topic" aria-labelledby={idOf(name)}>
      <h2 id={idOf(name)} tabIndex={-1}>
        {topic.title}
      </h2>
      {topic.body.slice(0, introduced).map((block, i) => (
        <Block key={i} block={block} />
      ))}
      <TopicPicture topic={name} leftHanded={leftHanded} />
      {topic.body.slice(introduced).map((block, i) => (
        <Block key={i + introduced} block={block} />
      ))}
    </article>
  );
}

function Contents({ names, topics }: { names: readonly string[]; topics: HelpTopics }) {
  return (
    <nav class="help-contents" aria-label={t.help.page.contents}>
      <ul>
        {names.map((name) => (
          <li key={name}>
            <button type="button" class="link" onClick={() => jumpTo(name)}>
              {topics[name]?.title}
            </button>
          </li>
        ))}
      </ul>
    </nav>
  );
}

/** All topics on one page: found by their words, walked by their titles, printed as they stand. */
export function HelpPage(props: { readonly topics: HelpTopics; readonly leftHanded: boolean }) {
  const { topics, leftHanded } = props;
  const [query, setQuery] = useState('');
  const found = findTopics(topics, query);
  const s = t.help.page;
  return (
    <main id="main" class="page help" tabIndex={-1}>
      <h1>{s.title}</h1>
      <div class="help-find">
        <label>
          {s.search}
          <input
            type="search"
            dir="auto"
            value={query}
            onInput={(event) => setQuery(event.currentTarget.value)}
          />
        </label>
        <button type="button" onClick={() => print()}>
          {s.print}
        </button>
      </div>
      <p class="fine" role="status">
        {found.length === 0 ? s.nothing : s.found(found.length)}
      </p>
      <div class="help-columns">
        <Contents names={found} topics={topics} />
        <div>
          {found.map((name) => {
            const topic = topics[name];
            return topic && <Topic key={name} {...{ name, topic, leftHanded }} />;
          })}
        </div>
      </div>
      <Caution />
    </main>
  );
}
