import { useLayoutEffect, useRef } from 'preact/hooks';
import { fitVars } from './fit.ts';

const RULER_PX = 100;

/** A word as large as its place allows. Its letters are measured, since typefaces differ in width by a third. */
export function FittedWord({ word, testId }: { readonly word: string; readonly testId?: string }) {
  const shown = useRef<HTMLParagraphElement>(null);
  const ruler = useRef<HTMLSpanElement>(null);
  // All digits are equally wide.
  const measured = word.replace(/\d/g, '0');
  useLayoutEffect(() => {
    const span = ruler.current;
    if (span === null) return undefined;
    const measure = (): void => {
      const em = span.getBoundingClientRect().width / RULER_PX / Math.max(1, measured.length);
      if (em > 0) shown.current?.style.setProperty('--em', em.toFixed(3));
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(span);
    return () => observer.disconnect();
  }, [measured]);
  return (
    <>
      <p ref={shown} class="state-word" data-testid={testId} style={fitVars(word)}>
        {word}
      </p>
      <div class="fit-ruler" aria-hidden="true">
        <span ref={ruler} data-text={measured} />
      </div>
    </>
  );
}
